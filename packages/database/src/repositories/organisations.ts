import type { TransactionClient } from "../client";

export interface Organisation {
  id: string;
  name: string;
  createdAt: Date;
}

export function createOrganisationRepository(client: TransactionClient) {
  return {
    async create(input: { name: string }): Promise<Organisation> {
      return client.organisation.create({ data: { name: input.name } });
    },
    async find(organisationId: string): Promise<Organisation | null> {
      return client.organisation.findUnique({ where: { id: organisationId } });
    },
    /** For the operator's command line only: nothing a request does may look across organisations. */
    async listAll(): Promise<Organisation[]> {
      return client.organisation.findMany({ orderBy: { createdAt: "asc" } });
    },
  };
}

/** Waits for every other transaction that holds the organisation. Used where a rule spans several rows. */
export async function lockOrganisation(client: TransactionClient, organisationId: string): Promise<void> {
  await client.$queryRaw`SELECT "id" FROM "Organisation" WHERE "id" = ${organisationId} FOR UPDATE`;
}
