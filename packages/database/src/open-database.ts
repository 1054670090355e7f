import { createClient } from "./client";
import { type Connection, type ConnectionOptions, type DatabaseKind, openConnection } from "./connection";
import { createAssignmentRepository } from "./repositories/assignments";
import { createAttemptRepository } from "./repositories/attempts";
import { createAuditRepository } from "./repositories/audit";
import { createChartRepository } from "./repositories/charts";
import { createClassRepository } from "./repositories/classes";
import { createGradeRepository } from "./repositories/grades";
import { createInvitationRepository } from "./repositories/invitations";
import { createMembershipRepository } from "./repositories/memberships";
import { createOrganisationRepository } from "./repositories/organisations";
import { createScenarioRepository } from "./repositories/scenarios";
import { createUserRepository } from "./repositories/users";
import { createVehicleRepository } from "./repositories/vehicles";

export type Database = ReturnType<typeof createDatabase>;

/** The repositories over an open connection; closing the database closes the connection. */
export function createDatabase(connection: Connection) {
  const client = createClient(connection.adapter);
  return {
    kind: connection.kind satisfies DatabaseKind,
    organisations: createOrganisationRepository(client),
    users: createUserRepository(client),
    memberships: createMembershipRepository(client),
    classes: createClassRepository(client),
    vehicles: createVehicleRepository(client),
    charts: createChartRepository(client),
    scenarios: createScenarioRepository(client),
    assignments: createAssignmentRepository(client),
    attempts: createAttemptRepository(client),
    grades: createGradeRepository(client),
    invitations: createInvitationRepository(client),
    audit: createAuditRepository(client),
    /** Answers when the database does: for the health check. */
    async ping(): Promise<void> {
      await client.$queryRaw`SELECT 1`;
    },
    async close(): Promise<void> {
      await client.$disconnect();
      await connection.close();
    },
  };
}

/** Opens a database that has been migrated already (`cli.ts prepare` does it before the web starts). */
export async function openDatabase(options: ConnectionOptions): Promise<Database> {
  return createDatabase(await openConnection(options));
}
