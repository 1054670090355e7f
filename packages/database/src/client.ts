import type { SqlDriverAdapterFactory } from "@prisma/driver-adapter-utils";
import { PrismaClient } from "./generated/client";

/**
 * Columns no query returns unless a repository function selects them by name. A new secret column belongs in
 * this list; the integration test walks it.
 */
export const secretColumns = {
  user: { passwordHash: true },
  invitation: { tokenHash: true },
  attempt: { variantSeed: true, variant: true },
  attemptEvent: { world: true },
} as const;

export function createClient(adapter: SqlDriverAdapterFactory) {
  return new PrismaClient({ adapter, omit: secretColumns });
}

export type Client = ReturnType<typeof createClient>;

/** What a repository may use: the client itself, or the client inside an open transaction. */
export type TransactionClient = Parameters<Parameters<Client["$transaction"]>[0]>[0];
