import "server-only";
import type { Database, ScenarioForAuthor } from "@probeworthy/database";
import {
  listFaultPlaces,
  prepareVehicle,
  startState,
  testPoints,
  type VehicleDocument,
} from "@probeworthy/vehicle";
import { type BuilderView, builderViewSchema, type PlaceOption } from "@/features/builder/builder-view";
import { faultKindNames } from "@/features/builder/fault-forms";
import { BoundedCache } from "../services/attempts/bounded-cache";
import { checkDraft } from "../services/scenarios/check-draft";
import { requireLatestVehicle } from "../services/scenarios/find-scenario";

/** The draft, or the newest version to start the next one from, with everything its vehicle offers. */
export async function loadBuilder(
  database: Database,
  organisationId: string,
  scenario: ScenarioForAuthor,
): Promise<BuilderView> {
  const ref = { organisationId, scenarioId: scenario.id };
  const { versionId, document } = await requireLatestVehicle(database, organisationId, scenario.vehicleId);
  const saved = scenario.draft ?? (await database.scenarios.latestVersion(ref))?.document ?? {};
  return builderViewSchema.parse({
    scenarioId: scenario.id,
    title: scenario.title,
    savedAt: scenario.updatedAt.toISOString(),
    hasDraft: scenario.hasDraft,
    publishedNumber: scenario.latestVersion?.number ?? null,
    document: Object(saved),
    messages: checkDraft(saved, document).messages,
    vehicle: {
      title: document.title,
      systems: document.systems.map(({ id, title }) => ({ id, title })),
      conditions: document.conditions,
      places: placesOf(versionId, document),
    },
  } satisfies BuilderView);
}

const places = new BoundedCache<Record<string, PlaceOption[]>>(16);

/** Listing them needs the vehicle started once for the names of its test points, and a version never changes. */
function placesOf(versionId: string, document: VehicleDocument): Record<string, PlaceOption[]> {
  const known = places.get(versionId);
  if (known !== undefined) return known;
  const titles = pointTitles(document);
  const made = Object.fromEntries(
    faultKindNames.map((kind) => [
      kind,
      listFaultPlaces(document, kind).map(({ place, part, other, title }): PlaceOption => {
        const named = titles.get(place);
        return {
          place,
          part: part ?? null,
          other: other ?? null,
          title: title === place && named !== undefined ? `${place} ${named}` : title,
          group: groupOf(document, place),
        };
      }),
    ]),
  );
  places.set(versionId, made);
  return made;
}

function pointTitles(document: VehicleDocument): Map<string, string> {
  const vehicle = prepareVehicle(document);
  if (!vehicle.ok) throw new Error(`the vehicle ${document.id} cannot be prepared: ${vehicle.error.code}`);
  const state = startState(vehicle.value);
  if (!state.ok) throw new Error(`the vehicle ${document.id} cannot be started: ${state.error.code}`);
  return new Map(testPoints(vehicle.value, state.value).map(({ id, title }) => [id, title]));
}

function groupOf(document: VehicleDocument, place: string): string {
  const [owner = place] = place.split(/[.:]/);
  const has = (list: readonly { id: string }[]) => list.some(({ id }) => id === owner);
  if (has(document.conductors)) return "Conductors";
  if (has(document.groundPoints)) return "Ground points";
  const connector = document.connectors.find(({ id }) => id === owner);
  if (connector !== undefined) return `${connector.id} ${connector.title}`;
  const part = document.components.find(({ id }) => id === owner);
  if (part !== undefined && place !== owner) return `${part.id} ${part.title}`;
  return part === undefined ? "Other places" : "Components";
}
