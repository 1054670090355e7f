import {
  type Component,
  type ConditionDefinition,
  type Conductor,
  type Connector,
  checkChart,
  type Fault,
  parseChart,
  parseVehicle,
  prepareVehicle,
  type Result,
  type VehicleDocument,
} from "@probeworthy/vehicle";

/** The value of a result that a test takes for granted. */
export function must<T, E>(result: Result<T, E>): T {
  if (!result.ok) throw new Error(JSON.stringify(result.error));
  return result.value;
}

/** One position per terminal, in order. */
export const plug = (id: string, component: string, terminals: readonly string[]): Connector => ({
  id,
  title: `Plug of ${component}`,
  rows: 1,
  columns: terminals.length,
  component,
  cavities: terminals.map((terminal, position) => ({ cavity: String(position + 1), terminal })),
});

export const wire = (
  id: string,
  from: string,
  to: string,
  metres = 0.1,
  squareMillimetres = 2.5,
): Conductor => ({
  id,
  from,
  to,
  colour: "BK",
  squareMillimetres,
  metres,
});

export const number = (
  name: string,
  initial: number,
  minimum = -1000,
  maximum = 10_000,
): ConditionDefinition => ({
  kind: "number",
  name,
  title: name,
  unit: "",
  minimum,
  maximum,
  step: 1,
  initial,
});

export interface Rig {
  readonly components: Component[];
  readonly connectors?: Connector[];
  readonly conductors: Conductor[];
  readonly conditions?: ConditionDefinition[];
  readonly splices?: string[];
}

/** A test rig on a 12.7 V battery `G1` whose negative is bolted to the body at XE1: nothing but what the check needs. */
export function buildRig(rig: Rig): VehicleDocument {
  return must(
    parseVehicle({
      format: "probeworthy-vehicle-1",
      id: "rig",
      title: "Rig",
      description: "Test rig",
      nominalVolts: 12,
      conditions: rig.conditions ?? [],
      components: [
        {
          kind: "battery",
          id: "G1",
          title: "Battery",
          capacityAmpereHours: 60,
          internalOhms: 0.001,
          stateOfCharge: 1,
        },
        ...rig.components,
      ],
      connectors: rig.connectors ?? [],
      conductors: [wire("W1", "G1:-", "XE1", 0.01, 120), ...rig.conductors],
      splices: (rig.splices ?? []).map((id) => ({ id })),
      groundPoints: [{ id: "XE1", title: "Ground" }],
      symptoms: [],
      systems: [
        {
          id: "rig",
          title: "Rig",
          components: ["G1"],
          howItWorks: [],
          normalSurprises: [],
          cautions: [],
          chart: [],
        },
      ],
    }),
  );
}

/** Checks a chart typed as CSV and lists the rows that differ, in words. */
export function differences(document: VehicleDocument, csv: string, faults: readonly Fault[] = []): string[] {
  const rows = must(checkChart(must(prepareVehicle(document, faults)), must(parseChart(csv, document))));
  return rows.filter(({ agrees }) => !agrees).map(({ message }) => message);
}
