import { type Client, inTransaction, type TransactionClient } from "../client";
import { contentHash } from "../content-hash";
import { isUniqueViolation } from "../errors";
import { toJson, toOptionalJson } from "../json";
import { fail, type Result, succeed } from "../result";
import { createSheetStore } from "./vehicle-sheets";

export interface VehicleSummary {
  id: string;
  key: string;
  name: string;
  latestNumber: number;
  createdAt: Date;
}

/** What an author finds: own vehicles with their draft, also before the first version. */
export interface VehicleForAuthor extends VehicleSummary {
  isOwn: boolean;
  draft: unknown;
  hasDraft: boolean;
  archivedAt: Date | null;
  updatedAt: Date;
}

export interface VehicleVersionEntry {
  id: string;
  number: number;
  createdAt: Date;
  createdBy: string | null;
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
    ...createSheetStore(client),

    /** Vehicles that can be used: those with a version. */
    async list(input: { organisationId: string }): Promise<VehicleSummary[]> {
      const rows = await client.vehicle.findMany({
        where: { organisationId: input.organisationId, archivedAt: null, versions: { some: {} } },
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

    /** All that is not archived, also what was never published. */
    async listForAuthors(input: { organisationId: string }): Promise<VehicleForAuthor[]> {
      const rows = await client.vehicle.findMany({
        where: { organisationId: input.organisationId, archivedAt: null },
        include: withLatest,
        orderBy: [{ name: "asc" }, { id: "asc" }],
      });
      return rows.map(toAuthor);
    },

    async find({ organisationId, vehicleId }: VehicleRef): Promise<VehicleForAuthor | null> {
      const row = await client.vehicle.findFirst({
        where: { id: vehicleId, organisationId },
        include: withLatest,
      });
      return row === null ? null : toAuthor(row);
    },

    /** A new vehicle of the organisation's own, without a version yet. */
    async createDraft(input: {
      organisationId: string;
      key: string;
      name: string;
      draft: unknown;
      savedAt: Date;
    }): Promise<Result<{ id: string }, { code: "key_taken" }>> {
      const { organisationId, key, name, draft, savedAt } = input;
      try {
        const row = await client.vehicle.create({
          data: { organisationId, key, name, isOwn: true, draft: toOptionalJson(draft), updatedAt: savedAt },
          select: { id: true },
        });
        return succeed(row);
      } catch (error) {
        if (isUniqueViolation(error)) return fail({ code: "key_taken" });
        throw error;
      }
    },

    /** Saves over the state the author has seen; `changed` when another screen saved meanwhile. */
    async saveDraftOver(
      input: VehicleRef & { name: string; draft: unknown; seenAt: Date; savedAt: Date },
    ): Promise<Result<{ savedAt: Date }, { code: "not_found" } | { code: "changed"; savedAt: Date }>> {
      const { organisationId, vehicleId, name, draft, seenAt, savedAt } = input;
      const mine = { id: vehicleId, organisationId, isOwn: true, archivedAt: null };
      const { count } = await client.vehicle.updateMany({
        where: { ...mine, updatedAt: seenAt },
        data: { name, draft: toOptionalJson(draft), updatedAt: savedAt },
      });
      if (count === 1) return succeed({ savedAt });
      const present = await client.vehicle.findFirst({ where: mine, select: { updatedAt: true } });
      return fail(present === null ? { code: "not_found" } : { code: "changed", savedAt: present.updatedAt });
    },

    /** After publishing: the newest version is all there is, unless the draft was saved again meanwhile. */
    async dropDraft({ organisationId, vehicleId, seenAt }: VehicleRef & { seenAt: Date }): Promise<void> {
      await client.vehicle.updateMany({
        where: { id: vehicleId, organisationId, updatedAt: seenAt },
        data: { draft: toOptionalJson(null) },
      });
    },

    async archive({
      organisationId,
      vehicleId,
      archivedAt,
    }: VehicleRef & { archivedAt: Date }): Promise<void> {
      await client.vehicle.updateMany({
        where: { id: vehicleId, organisationId, isOwn: true },
        data: { archivedAt },
      });
    },

    /** Newest first. */
    async versions({ organisationId, vehicleId }: VehicleRef): Promise<VehicleVersionEntry[]> {
      const rows = await client.vehicleVersion.findMany({
        where: { vehicleId, vehicle: { organisationId } },
        select: { id: true, number: true, createdAt: true, createdBy: { select: { name: true } } },
        orderBy: { number: "desc" },
      });
      return rows.map(({ createdBy, ...row }) => ({ ...row, createdBy: createdBy?.name ?? null }));
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

const withLatest = {
  versions: { select: { number: true }, orderBy: { number: "desc" }, take: 1 },
} as const;

interface AuthorRow {
  id: string;
  key: string;
  name: string;
  isOwn: boolean;
  draft: unknown;
  archivedAt: Date | null;
  createdAt: Date;
  updatedAt: Date;
  versions: { number: number }[];
}

const toAuthor = ({ versions, ...row }: AuthorRow): VehicleForAuthor => ({
  id: row.id,
  key: row.key,
  name: row.name,
  isOwn: row.isOwn,
  draft: row.draft,
  hasDraft: row.draft !== null,
  archivedAt: row.archivedAt,
  createdAt: row.createdAt,
  updatedAt: row.updatedAt,
  latestNumber: versions[0]?.number ?? 0,
});

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
