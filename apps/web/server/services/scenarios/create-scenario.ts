import "server-only";
import { randomBytes } from "node:crypto";
import type { Database } from "@probeworthy/database";
import type { VehicleDocument } from "@probeworthy/vehicle";
import type { NewScenario } from "@/features/builder/draft-input";
import { slug } from "@/features/builder/scenario-form";
import type { SessionUser } from "../../auth/session-user";
import { findScenario, loadLatestVehicle } from "./find-scenario";

export type CreateResult =
  | { readonly ok: true; readonly value: { readonly id: string } }
  | {
      readonly ok: false;
      readonly error: { readonly path: "vehicleId" | "copyOf"; readonly message: string };
    };

/** A new draft, empty or as a copy of another scenario of the same vehicle. */
export async function createScenario(
  database: Database,
  { organisationId, userId }: Pick<SessionUser, "organisationId" | "userId">,
  { title, vehicleId, copyOf }: NewScenario,
): Promise<CreateResult> {
  const vehicle = await loadLatestVehicle(database, organisationId, vehicleId);
  if (vehicle === undefined)
    return refuse("vehicleId", "There is no such vehicle. Choose one from the list.");
  let base: object = blank(vehicle.document);
  if (copyOf !== null) {
    const source = await findScenario(database, organisationId, copyOf);
    if (source === undefined || source.vehicleId !== vehicleId) {
      return refuse("copyOf", "There is no such scenario for this vehicle. Choose one from the list.");
    }
    const version = await database.scenarios.latestVersion({ organisationId, scenarioId: copyOf });
    base = { ...base, ...Object(source.draft ?? version?.document ?? {}) };
  }
  // The key is part of every log of this scenario, so it never changes with the title.
  const key = `${slug(title) || "scenario"}-${randomBytes(3).toString("hex")}`;
  const created = await database.scenarios.create({
    organisationId,
    key,
    title,
    vehicleId,
    draft: { ...base, id: key, title },
    createdById: userId,
  });
  if (created.ok) return { ok: true, value: { id: created.value.id } };
  throw new Error(`the scenario ${key} could not be made: ${created.error.code}`);
}

const refuse = (path: "vehicleId" | "copyOf", message: string) =>
  ({ ok: false, error: { path, message } }) as const;

/** What most scenarios have in common; the rest is for the author. */
function blank(vehicle: VehicleDocument) {
  return {
    format: "probeworthy-scenario-1",
    vehicle: vehicle.id,
    system: vehicle.systems[0]?.id ?? "",
    level: "starter",
    learningGoal: "",
    instructorNote: "",
    complaints: [""],
    pool: [{ title: "", weight: 1, faults: [{ kind: "" }] }],
    startConditions: {},
    instruments: ["volts", "ohms", "continuity", "amps", "codes", "liveData"],
    limits: { shopMinutes: 90, actions: 150 },
    par: { shopMinutes: 30, readings: 7 },
    requirePrediction: false,
    weights: { cause: 40, method: 25, safety: 10, efficiency: 15, report: 10 },
    passMark: 70,
  };
}
