import "server-only";
import type { ScenarioDocument } from "@probeworthy/evaluation";
import { previewVariants } from "@probeworthy/evaluation/server";
import type { VehicleDocument } from "@probeworthy/vehicle";
import { type PreviewView, previewSchema } from "@/features/builder/builder-view";
import { describeFault } from "./fault-words";

export type PreviewResult =
  | { readonly ok: true; readonly value: PreviewView }
  | { readonly ok: false; readonly error: { readonly code: string; readonly message: string } };

/** One variant as its author sees it. */
export function previewDraft(
  scenario: ScenarioDocument,
  vehicle: VehicleDocument,
  seed: string,
): PreviewResult {
  const [drawn] = previewVariants(scenario, vehicle, [seed]);
  if (drawn === undefined) throw new Error("one seed gives one preview");
  if (!drawn.preview.ok) {
    const { error } = drawn.preview;
    const message = "message" in error ? error.message : "The vehicle cannot be simulated.";
    return { ok: false, error: { code: error.code, message } };
  }
  const { title, faults, complaint, conditions, situations } = drawn.preview.value;
  const definitions = new Map(vehicle.conditions.map((condition) => [condition.name, condition]));
  return {
    ok: true,
    value: previewSchema.parse({
      seed,
      title,
      faults: faults.map(describeFault),
      complaint,
      conditions: Object.entries(conditions).map(([name, value]) => {
        const condition = definitions.get(name);
        return `${condition?.title ?? name} ${value}${condition?.kind === "number" ? ` ${condition.unit}` : ""}`;
      }),
      situations: situations.map((situation) => ({
        title: situation.title,
        noticed: situation.noticed.map(({ id, title: name, text, normal }) => ({
          id,
          title: name,
          text,
          normal,
        })),
        modules: situation.modules.map(({ id, answered, codes }) => ({ id, answered, codes: [...codes] })),
      })),
    } satisfies PreviewView),
  };
}
