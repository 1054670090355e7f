// Run as a process of its own: writes events into the embedded database of the folder it is given, and prints one
// line of JSON per acknowledged event, until somebody stops it.

import { openMigratedDatabase } from "@probeworthy/database/migrations";
import { eventOf, makeAttempt, makeSchool, must } from "./factories";

const [, , dataDirectory] = process.argv;
if (dataDirectory === undefined) throw new Error("usage: event-writer.ts <data folder>");

async function write(folder: string): Promise<never> {
  const { database } = await openMigratedDatabase({ dataDirectory: folder });
  const school = await makeSchool(database);
  const attemptId = await makeAttempt(database, school);
  const { organisationId } = school;
  for (let expected = 0; ; expected += 1) {
    const { sequence } = must(await database.attempts.appendEvent(eventOf(school, attemptId, expected)));
    process.stdout.write(`${JSON.stringify({ organisationId, attemptId, sequence })}\n`);
  }
}

await write(dataDirectory);
