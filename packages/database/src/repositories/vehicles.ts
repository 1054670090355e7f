import { type Client, inTransaction, type TransactionClient } from "../client";
import { contentHash } from "../content-hash";
import { isUniqueViolation } from "../errors";
import { toJson } from "../json";
import { fail, type Result, succeed } from "../result";

export interface VehicleSummary {
  id: string;
  key: string;
  name: string;
  latestNumber: number;
  createdAt: Date;
}

export interface VehicleVersion {
  id: string;
  vehicleId: string;
  vehicleName: string;
  number: number;
  document: unknown;
  contentHash: string;
  createdAt: Date;
}

interface VehicleRef {
  organisationId: string;
  vehicleId: string;
}

export function createVehicleRepository(client: Client) {
  return {
    async list(input: { organisationId: string }): Promise<VehicleSummary[]> {
      const rows = await client.vehicle.findMany({
        where: { organisationId: input.organisationId, archivedAt: null },
        include: { versions: { select: { number: true }, orderBy: { number: "desc" }, take: 1 } },
        orderBy: [{ name: "asc" }, { id: "asc" }],
      });
      return rows.map(({ id, key, name, createdAt, versions }) => ({
        id,
        key,
        name,
        createdAt,
        latestNumber: versions[0]?.number ?? 0,
      }));
    },

    async findByKey({
      organisationId,
      key,
    }: {
      organisationId: string;
      key: string;
    }): Promise<{ id: string } | null> {
      return client.vehicle.findUnique({
        where: { organisationId_key: { organisationId, key } },
        select: { id: true },
      });
    },

    async latestVersion({ organisationId, vehicleId }: VehicleRef): Promise<VehicleVersion | null> {
      const row = await client.vehicleVersion.findFirst({
        where: { vehicleId, vehicle: { organisationId } },
        include: { vehicle: true },
        orderBy: { number: "desc" },
      });
      return row === null ? null : toVersion(row);
    },

    async version(input: { organisationId: string; versionId: string }): Promise<VehicleVersion | null> {
      const row = await client.vehicleVersion.findFirst({
        where: { id: input.versionId, vehicle: { organisationId: input.organisationId } },
        include: { vehicle: true },
      });
      return row === null ? null : toVersion(row);
    },

    /** A new vehicle with its first version. */
    async create(input: {
      organisationId: string;
      key: string;
      name: string;
      document: unknown;
      createdById: string | null;
    }): Promise<Result<{ id: string; versionId: string }, { code: "key_taken" }>> {
      const { organisationId, key, name, document, createdById } = input;
      try {
        const row = await client.vehicle.create({
          data: {
            organisationId,
            key,
            name,
            versions: {
              create: {
                number: 1,
                document: toJson(document),
                contentHash: contentHash(document),
                createdById,
              },
            },
          },
          include: { versions: { select: { id: true } } },
        });
        const [version] = row.versions;
        if (version === undefined) throw new Error("the version created with its vehicle is missing");
        return succeed({ id: row.id, versionId: version.id });
      } catch (error) {
        if (isUniqueViolation(error)) return fail({ code: "key_taken" });
        throw error;
      }
    },

    /** The next version; content equal to the latest one answers with that one and writes nothing. */
    async createVersion(
      input: VehicleRef & { document: unknown; createdById: string | null },
    ): Promise<Result<{ id: string; number: number; isNew: boolean }, { code: "not_found" }>> {
      const { organisationId, vehicleId, document, createdById } = input;
      return inTransaction(client, async (tx) => {
        if (!(await lockVehicle(tx, { organisationId, vehicleId }))) return fail({ code: "not_found" });
        const latest = await tx.vehicleVersion.findFirst({
          where: { vehicleId },
          select: { id: true, number: true, contentHash: true },
          orderBy: { number: "desc" },
        });
        const hash = contentHash(document);
        if (latest?.contentHash === hash) {
          return succeed({ id: latest.id, number: latest.number, isNew: false });
        }
        const number = (latest?.number ?? 0) + 1;
        const { id } = await tx.vehicleVersion.create({
          data: { vehicleId, number, document: toJson(document), contentHash: hash, createdById },
        });
        return succeed({ id, number, isNew: true });
      });
    },
  };
}

/** Two authors saving at once get consecutive numbers. */
async function lockVehicle(
  tx: TransactionClient,
  { organisationId, vehicleId }: VehicleRef,
): Promise<boolean> {
  const rows = await tx.$queryRaw<unknown[]>`
    SELECT "id" FROM "Vehicle" WHERE "id" = ${vehicleId} AND "organisationId" = ${organisationId} FOR UPDATE`;
  return rows.length === 1;
}

interface VersionRow {
  id: string;
  vehicleId: string;
  number: number;
  document: unknown;
  contentHash: string;
  createdAt: Date;
  vehicle: { name: string };
}

function toVersion({
  id,
  vehicleId,
  number,
  document,
  contentHash,
  createdAt,
  vehicle,
}: VersionRow): VehicleVersion {
  return { id, vehicleId, vehicleName: vehicle.name, number, document, contentHash, createdAt };
}
