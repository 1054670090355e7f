import "server-only";
import type { Database, VehicleForAuthor } from "@probeworthy/database";
import { trainingVehicle } from "@probeworthy/training-vehicle";
import { checkDraft } from "@probeworthy/vehicle/authoring";
import {
  type AuthoringView,
  authoringViewSchema,
  type Changes,
  type NewVehicleView,
  newVehicleViewSchema,
  type VersionsView,
  versionsViewSchema,
} from "@/features/authoring/authoring-view";
import { compareVehicles } from "@/features/authoring/versions/compare-vehicles";
import { draftOf, findOwnVehicle } from "../services/vehicles/find-vehicle";

/** What a new vehicle can start from. */
export const newVehicleView = (): NewVehicleView =>
  newVehicleViewSchema.parse({
    trainingSystems: trainingVehicle.systems.map(({ id, title, components }) => ({
      id,
      title,
      components: components.length,
    })),
    placements: [],
  } satisfies NewVehicleView);

/** Everything the workspace starts from; undefined for a vehicle that is not the organisation's own. */
export async function loadAuthoring(
  database: Database,
  organisationId: string,
  vehicleId: string,
): Promise<AuthoringView | undefined> {
  const vehicle = await findOwnVehicle(database, organisationId, vehicleId);
  if (vehicle === undefined) return undefined;
  const document = await draftOf(database, organisationId, vehicle);
  return authoringViewSchema.parse({
    vehicleId: vehicle.id,
    title: vehicle.name,
    savedAt: vehicle.updatedAt.toISOString(),
    publishedNumber: vehicle.latestNumber === 0 ? null : vehicle.latestNumber,
    document,
    messages: [...checkDraft(document).messages],
  } satisfies AuthoringView);
}

/** The draft against the newest version; against nothing before the first. */
export async function loadChanges(
  database: Database,
  organisationId: string,
  vehicle: VehicleForAuthor,
): Promise<Changes> {
  const latest = await database.vehicles.latestVersion({ organisationId, vehicleId: vehicle.id });
  const draft = await draftOf(database, organisationId, vehicle);
  const before = latest === null ? { ...emptyOf(draft) } : Object(latest.document);
  return { changes: compareVehicles(before, draft) };
}

/** Before the first version everything is new, but the vehicle's own name is not a change. */
const emptyOf = ({ title, description, nominalVolts, drawing }: Readonly<Record<string, unknown>>) => ({
  title,
  description,
  nominalVolts,
  drawing,
});

export async function loadVersions(
  database: Database,
  organisationId: string,
  vehicleId: string,
  chosen: { readonly from?: number | undefined; readonly to?: number | undefined },
): Promise<VersionsView | undefined> {
  const vehicle = await findOwnVehicle(database, organisationId, vehicleId);
  if (vehicle === undefined) return undefined;
  const versions = await database.vehicles.versions({ organisationId, vehicleId });
  const known = (number: number | undefined) => versions.find((version) => version.number === number);
  const to = known(chosen.to) ?? versions[0];
  const from = known(chosen.from) ?? versions[1] ?? versions[0];
  const documentOf = async (versionId: string | undefined) =>
    versionId === undefined
      ? {}
      : Object((await database.vehicles.version({ organisationId, versionId }))?.document);
  return versionsViewSchema.parse({
    vehicleId,
    title: vehicle.name,
    hasDraft: vehicle.hasDraft,
    versions: versions.map(({ number, createdAt, createdBy }) => ({
      number,
      createdAt: createdAt.toISOString(),
      createdBy,
    })),
    from: from?.number ?? null,
    to: to?.number ?? null,
    changes: compareVehicles(await documentOf(from?.id), await documentOf(to?.id)),
  } satisfies VersionsView);
}
