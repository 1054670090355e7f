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
export type TransactionClient = Omit<
  Client,
  "$connect" | "$disconnect" | "$extends" | "$on" | "$transaction"
>;

/**
 * Runs `work` in one transaction. Keep it short: the embedded database serves one transaction at a time and
 * everybody else waits, for at most `maxWait`.
 */
export async function inTransaction<Value>(
  client: Client,
  work: (tx: TransactionClient) => Promise<Value>,
): Promise<Value> {
  // Prisma's type for the client inside a transaction forgets the omitted columns; at run time they stay omitted.
  return client.$transaction((tx) => work(tx as unknown as TransactionClient), {
    maxWait: 10_000,
    timeout: 10_000,
  });
}
