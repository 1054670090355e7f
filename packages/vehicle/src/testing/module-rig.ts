import type { Component, ComponentOf } from "../document/component";
import type { ConditionDefinition } from "../document/condition";
import type { Conductor, VehicleDocument } from "../document/vehicle-document";

type Module = ComponentOf<"module">;

/** A wire of a tenth of a milliohm or so: it hardly counts. */
export const lead = (id: string, from: string, to: string): Conductor => ({
  id,
  from,
  to,
  colour: "BK",
  squareMillimetres: 50,
  metres: 0.1,
});

export const numberCondition = (name: string, initial: number): ConditionDefinition => ({
  kind: "number",
  name,
  title: name,
  unit: "",
  minimum: -10_000,
  maximum: 10_000,
  step: 1,
  initial,
});

/** A module on 30 and 31 that does nothing but what is given, and takes hardly any current. */
export const module = (id: string, terminals: readonly string[], rest: Partial<Module>): Module => ({
  kind: "module",
  id,
  title: id,
  terminals: ["30", "31", ...terminals].map((name) => ({ name, function: name })),
  ground: "31",
  internalGroundOhms: 1e-4,
  supply: { terminal: "30", wakeVolts: 8, dropoutVolts: 6, quiescentAmps: 1e-6, runningAmps: 1e-6 },
  signals: [],
  ...rest,
});

export const resistor = (id: string, ohms: number): Component => ({ kind: "resistor", id, title: id, ohms });

/** A fully charged, stiff battery G1 with its splice XS1 and ground XE1, and what is given; modules are fed at once. */
export function moduleRig(rig: {
  readonly modules: readonly Module[];
  readonly components?: readonly Component[];
  readonly conductors?: readonly Conductor[];
  readonly conditions?: readonly ConditionDefinition[];
}): VehicleDocument {
  return {
    format: "probeworthy-vehicle-1",
    id: "rig",
    title: "Rig",
    description: "Invented, for tests only.",
    nominalVolts: 12,
    conditions: [...(rig.conditions ?? [])],
    components: [
      {
        kind: "battery",
        id: "G1",
        title: "Battery",
        capacityAmpereHours: 60,
        internalOhms: 1e-4,
        stateOfCharge: 1,
      },
      ...rig.modules,
      ...(rig.components ?? []),
    ],
    connectors: [],
    conductors: [
      lead("W1", "G1:+", "XS1"),
      lead("W2", "G1:-", "XE1"),
      ...rig.modules.flatMap(({ id }) => [
        lead(`W${id}30`, "XS1", `${id}:30`),
        lead(`W${id}31`, `${id}:31`, "XE1"),
      ]),
      ...(rig.conductors ?? []),
    ],
    splices: [{ id: "XS1" }],
    groundPoints: [{ id: "XE1", title: "Ground" }],
    symptoms: [],
    systems: [],
  };
}
