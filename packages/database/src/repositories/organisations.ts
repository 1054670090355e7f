import type { TransactionClient } from "../client";
import { isUniqueViolation } from "../errors";
import { fail, type Result, succeed } from "../result";
import { normaliseEmail } from "./users";

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
    /** For the operator's command line only: the first person of a new organisation. */
    async createWithAdministrator(input: {
      name: string;
      administrator: { name: string; email: string; passwordHash: string };
    }): Promise<Result<{ organisationId: string }, { code: "email_taken" }>> {
      const { name, email, passwordHash } = input.administrator;
      try {
        const { id } = await client.organisation.create({
          data: {
            name: input.name,
            memberships: {
              create: {
                role: "administrator",
                user: { create: { email: normaliseEmail(email), name, passwordHash } },
              },
            },
          },
        });
        return succeed({ organisationId: id });
      } catch (error) {
        if (isUniqueViolation(error)) return fail({ code: "email_taken" });
        throw error;
      }
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
