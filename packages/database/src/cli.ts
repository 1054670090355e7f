// The operator's commands, run with tsx: prepare, migrate, seed, organisation, draft-migration.
// Their last line on standard output is JSON for the launcher; everything for people goes to standard error.

import { randomBytes } from "node:crypto";
import { parseArgs } from "node:util";
import { demoSignIns, demoState, seed } from "../../../prisma/seed/index";
import type { Database } from "./index";
import { draftMigration, openMigratedDatabase } from "./migrations/index";
import { hashPassword } from "./password";

const usage = `usage: cli.ts <command> [options]
  prepare [--without-demo]   apply migrations; put the demo into an empty database
  migrate                    apply migrations
  seed                       add what is missing of the demo
  organisation --name N --administrator-name A --administrator-email E
                             a new organisation; prints its administrator's first password
  draft-migration --name N   write the migration that leads to the schema on disk
The database is DATABASE_URL, or the folder named by --data or PROBEWORTHY_DATA.`;

const { positionals, values } = parseArgs({
  allowPositionals: true,
  options: {
    data: { type: "string" },
    name: { type: "string" },
    "administrator-name": { type: "string" },
    "administrator-email": { type: "string" },
    "without-demo": { type: "boolean", default: false },
  },
});

const tell = (line: string): void => {
  process.stderr.write(`${line}\n`);
};

async function withDatabase<Value>(work: (database: Database) => Promise<Value>): Promise<Value> {
  const url = process.env.DATABASE_URL || undefined;
  const dataDirectory = values.data ?? process.env.PROBEWORTHY_DATA;
  if (url === undefined && !dataDirectory) {
    throw new Error("Which database? Set DATABASE_URL, or name a data folder with --data.");
  }
  const { database, applied } = await openMigratedDatabase({ url, dataDirectory });
  try {
    for (const name of applied) tell(`applied migration ${name}`);
    return await work(database);
  } finally {
    await database.close();
  }
}

async function prepare(database: Database): Promise<object> {
  const isEmpty = (await database.organisations.listAll()).length === 0;
  const state = await demoState(database);
  const wanted = state === "unfinished" || (isEmpty && !values["without-demo"]);
  if (wanted) {
    tell("putting the demo into the database");
    await seed(database, new Date());
  }
  return { kind: database.kind, signIns: wanted || state === "complete" ? demoSignIns : [] };
}

async function addDemo(database: Database): Promise<object> {
  await seed(database, new Date());
  return { kind: database.kind, signIns: demoSignIns };
}

async function organisation(database: Database): Promise<object> {
  const { name, "administrator-name": administratorName, "administrator-email": email } = values;
  if (!name || !administratorName || !email) throw new Error(usage);
  const password = randomBytes(12).toString("base64url");
  const created = await database.organisations.createWithAdministrator({
    name,
    administrator: { name: administratorName, email, passwordHash: await hashPassword(password) },
  });
  if (!created.ok) throw new Error(`${email} has an account already.`);
  tell(`${name} is there. ${email} signs in with ${password} and should change it.`);
  return { organisationId: created.value.organisationId };
}

async function draft(): Promise<object> {
  const name = values.name ?? "";
  if (!/^[a-z][a-z0-9_]*$/.test(name)) throw new Error("--name needs small letters, digits and underscores");
  const path = await draftMigration(name, new Date());
  tell(path === null ? "the migrations lead to this schema already" : `wrote ${path}`);
  return { path };
}

async function run(command: string | undefined): Promise<object> {
  switch (command) {
    case "prepare":
      return withDatabase(prepare);
    case "migrate":
      return withDatabase(async ({ kind }) => ({ kind }));
    case "seed":
      return withDatabase(addDemo);
    case "organisation":
      return withDatabase(organisation);
    case "draft-migration":
      return draft();
    default:
      throw new Error(usage);
  }
}

try {
  process.stdout.write(`${JSON.stringify(await run(positionals[0]))}\n`);
} catch (error) {
  tell(error instanceof Error ? error.message : String(error));
  process.exitCode = 1;
}
