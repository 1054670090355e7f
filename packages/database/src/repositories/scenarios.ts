import { type Client, inTransaction, type TransactionClient } from "../client";
import { contentHash } from "../content-hash";
import { isUniqueViolation } from "../errors";
import { toJson, toOptionalJson } from "../json";
import { fail, type Result, succeed } from "../result";

export interface ScenarioSummary {
  id: string;
  key: string;
  title: string;
  vehicleId: string;
  vehicleName: string;
  hasDraft: boolean;
  latestVersion: { id: string; number: number; publishedAt: Date } | null;
  archivedAt: Date | null;
  updatedAt: Date;
}

/** Author's view: the draft names the faults. */
export interface ScenarioForAuthor extends ScenarioSummary {
  draft: unknown;
}

/** Author's and server's view: the document names the faults, the ranges and the rubric. */
export interface ScenarioVersion {
  id: string;
  scenarioId: string;
  title: string;
  vehicleVersionId: string;
  number: number;
  document: unknown;
  contentHash: string;
  publishedAt: Date;
}

interface ScenarioRef {
  organisationId: string;
  scenarioId: string;
}

const forSummary = {
  vehicle: { select: { name: true } },
  versions: {
    select: { id: true, number: true, publishedAt: true },
    orderBy: { number: "desc" },
    take: 1,
  },
} as const;

export function createScenarioRepository(client: Client) {
  return {
    async list(input: { organisationId: string; includeArchived?: boolean }): Promise<ScenarioSummary[]> {
      const { organisationId, includeArchived = false } = input;
      const rows = await client.scenario.findMany({
        where: { organisationId, ...(includeArchived ? {} : { archivedAt: null }) },
        include: forSummary,
        orderBy: [{ title: "asc" }, { id: "asc" }],
      });
      return rows.map(toSummary);
    },

    async find({ organisationId, scenarioId }: ScenarioRef): Promise<ScenarioForAuthor | null> {
      const row = await client.scenario.findFirst({
        where: { id: scenarioId, organisationId },
        include: forSummary,
      });
      return row === null ? null : { ...toSummary(row), draft: row.draft };
    },

    async findByKey({
      organisationId,
      key,
    }: {
      organisationId: string;
      key: string;
    }): Promise<{ id: string } | null> {
      return client.scenario.findUnique({
        where: { organisationId_key: { organisationId, key } },
        select: { id: true },
      });
    },

    async latestVersion({ organisationId, scenarioId }: ScenarioRef): Promise<ScenarioVersion | null> {
      const row = await client.scenarioVersion.findFirst({
        where: { scenarioId, scenario: { organisationId } },
        include: { scenario: { select: { title: true } } },
        orderBy: { number: "desc" },
      });
      return row === null ? null : toVersion(row);
    },

    async version(input: { organisationId: string; versionId: string }): Promise<ScenarioVersion | null> {
      const row = await client.scenarioVersion.findFirst({
        where: { id: input.versionId, scenario: { organisationId: input.organisationId } },
        include: { scenario: { select: { title: true } } },
      });
      return row === null ? null : toVersion(row);
    },

    async create(input: {
      organisationId: string;
      key: string;
      title: string;
      vehicleId: string;
      draft: unknown;
      createdById: string | null;
    }): Promise<Result<{ id: string }, { code: "not_found" } | { code: "key_taken" }>> {
      const { organisationId, key, title, vehicleId, draft, createdById } = input;
      const known = await client.vehicle.count({ where: { id: vehicleId, organisationId } });
      if (known === 0) return fail({ code: "not_found" });
      try {
        const { id } = await client.scenario.create({
          data: { organisationId, key, title, vehicleId, draft: toOptionalJson(draft), createdById },
        });
        return succeed({ id });
      } catch (error) {
        if (isUniqueViolation(error)) return fail({ code: "key_taken" });
        throw error;
      }
    },

    /** Answers whether there was such a scenario to save to. */
    async saveDraft(input: ScenarioRef & { title: string; draft: unknown }): Promise<boolean> {
      const { organisationId, scenarioId, title, draft } = input;
      const { count } = await client.scenario.updateMany({
        where: { id: scenarioId, organisationId, archivedAt: null },
        data: { title, draft: toOptionalJson(draft) },
      });
      return count === 1;
    },

    /**
     * Saves only over the state the author has seen, so that two screens on one draft never overwrite each other.
     * Answers the moment to hand back with the next save.
     */
    async saveDraftOver(
      input: ScenarioRef & { title: string; draft: unknown; seenAt: Date; savedAt: Date },
    ): Promise<Result<{ savedAt: Date }, { code: "not_found" } | { code: "changed"; savedAt: Date }>> {
      const { organisationId, scenarioId, title, draft, seenAt, savedAt } = input;
      const { count } = await client.scenario.updateMany({
        where: { id: scenarioId, organisationId, archivedAt: null, updatedAt: seenAt },
        data: { title, draft: toOptionalJson(draft), updatedAt: savedAt },
      });
      if (count === 1) return succeed({ savedAt });
      const present = await client.scenario.findFirst({
        where: { id: scenarioId, organisationId, archivedAt: null },
        select: { updatedAt: true },
      });
      return fail(present === null ? { code: "not_found" } : { code: "changed", savedAt: present.updatedAt });
    },

    /**
     * The next version, which never changes again, and no draft left. Content equal to the latest version for
     * the same vehicle version answers with that one.
     */
    async publish(
      input: ScenarioRef & { vehicleVersionId: string; document: unknown; createdById: string | null },
    ): Promise<Result<{ id: string; number: number; isNew: boolean }, { code: "not_found" }>> {
      const { organisationId, scenarioId, vehicleVersionId, document, createdById } = input;
      return inTransaction(client, async (tx) => {
        if (!(await lockScenario(tx, input))) return fail({ code: "not_found" });
        const vehicle = await tx.vehicleVersion.count({
          where: {
            id: vehicleVersionId,
            vehicle: { organisationId, scenarios: { some: { id: scenarioId } } },
          },
        });
        if (vehicle === 0) return fail({ code: "not_found" });
        await tx.scenario.update({ where: { id: scenarioId }, data: { draft: toOptionalJson(null) } });
        const latest = await tx.scenarioVersion.findFirst({
          where: { scenarioId },
          select: { id: true, number: true, contentHash: true, vehicleVersionId: true },
          orderBy: { number: "desc" },
        });
        const hash = contentHash(document);
        if (latest?.contentHash === hash && latest.vehicleVersionId === vehicleVersionId) {
          return succeed({ id: latest.id, number: latest.number, isNew: false });
        }
        const number = (latest?.number ?? 0) + 1;
        const { id } = await tx.scenarioVersion.create({
          data: {
            scenarioId,
            vehicleVersionId,
            number,
            document: toJson(document),
            contentHash: hash,
            createdById,
          },
        });
        return succeed({ id, number, isNew: true });
      });
    },

    async archive(input: ScenarioRef & { archivedAt: Date | null }): Promise<boolean> {
      const { organisationId, scenarioId, archivedAt } = input;
      const { count } = await client.scenario.updateMany({
        where: { id: scenarioId, organisationId },
        data: { archivedAt },
      });
      return count === 1;
    },
  };
}

async function lockScenario(
  tx: TransactionClient,
  { organisationId, scenarioId }: ScenarioRef,
): Promise<boolean> {
  const rows = await tx.$queryRaw<unknown[]>`
    SELECT "id" FROM "Scenario" WHERE "id" = ${scenarioId} AND "organisationId" = ${organisationId} FOR UPDATE`;
  return rows.length === 1;
}

interface ScenarioRow {
  id: string;
  key: string;
  title: string;
  vehicleId: string;
  draft: unknown;
  archivedAt: Date | null;
  updatedAt: Date;
  vehicle: { name: string };
  versions: { id: string; number: number; publishedAt: Date }[];
}

function toSummary({ vehicle, versions, draft, ...row }: ScenarioRow): ScenarioSummary {
  const { id, key, title, vehicleId, archivedAt, updatedAt } = row;
  return {
    id,
    key,
    title,
    vehicleId,
    vehicleName: vehicle.name,
    hasDraft: draft !== null,
    latestVersion: versions[0] ?? null,
    archivedAt,
    updatedAt,
  };
}

interface VersionRow extends Omit<ScenarioVersion, "title"> {
  scenario: { title: string };
}

function toVersion(row: VersionRow): ScenarioVersion {
  const { id, scenarioId, vehicleVersionId, number, document, contentHash, publishedAt, scenario } = row;
  return {
    id,
    scenarioId,
    title: scenario.title,
    vehicleVersionId,
    number,
    document,
    contentHash,
    publishedAt,
  };
}
