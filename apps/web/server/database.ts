import "server-only";
import { type Database, openDatabase } from "@probeworthy/database";
import { env } from "@/env";

const holder = globalThis as typeof globalThis & { probeworthyDatabase?: Promise<Database> };

/** The one database of this process, opened on first use. A failed opening is tried again by the next caller. */
export function database(): Promise<Database> {
  holder.probeworthyDatabase ??= open().catch((error: unknown) => {
    delete holder.probeworthyDatabase;
    throw error;
  });
  return holder.probeworthyDatabase;
}

async function open(): Promise<Database> {
  const { DATABASE_URL, PROBEWORTHY_DATA } = env();
  return openDatabase(
    DATABASE_URL === undefined ? { dataDirectory: PROBEWORTHY_DATA } : { url: DATABASE_URL },
  );
}
