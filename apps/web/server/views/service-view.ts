import "server-only";
import {
  type Connector,
  prepareVehicle,
  startState,
  terminalChart,
  testPoints,
  type VehicleDocument,
} from "@probeworthy/vehicle";
import { type ServiceView, serviceViewSchema } from "@/features/service-information/service-view";
import { BoundedCache } from "../services/attempts/bounded-cache";
import { formatOhms, formatVolts } from "./chart-value";
import { connectorCautions, fuseCautions } from "./part-cautions";

const made = new BoundedCache<ServiceView>(32);

/**
 * The service information of one system. Made from the healthy document only, so it is the same for every attempt; the
 * version id is its key because a vehicle version never changes.
 */
export function serviceViewOf(versionId: string, document: VehicleDocument, systemId: string): ServiceView {
  const key = `${versionId}/${systemId}`;
  const known = made.get(key);
  if (known !== undefined) return known;
  const view = makeServiceView(document, systemId);
  made.set(key, view);
  return view;
}

function makeServiceView(document: VehicleDocument, systemId: string): ServiceView {
  const system = document.systems.find((candidate) => candidate.id === systemId);
  if (system === undefined) throw new Error(`the vehicle ${document.id} has no system ${systemId}`);
  return serviceViewSchema.parse({
    systemTitle: system.title,
    howItWorks: system.howItWorks,
    normalSurprises: system.normalSurprises,
    cautions: system.cautions,
    chart: chartOf(document, systemId),
    codes: codesOf(document),
    connectors: document.connectors.map((connector) => connectorOf(document, connector)),
    fuses: document.components.flatMap((part) =>
      part.kind !== "fuse"
        ? []
        : [
            {
              id: part.id,
              title: part.title,
              place: part.place ?? null,
              ratingAmps: part.ratingAmps,
              form: part.form,
              cautions: fuseCautions(part.ratingAmps),
            },
          ],
    ),
  } satisfies ServiceView);
}

/** Simulated on the vehicle as it leaves the works; a document that was published can be simulated. */
function chartOf(document: VehicleDocument, systemId: string): ServiceView["chart"] {
  const healthy = prepareVehicle(document);
  if (!healthy.ok) throw new Error(`the vehicle ${document.id} cannot be simulated: ${healthy.error.code}`);
  const state = startState(healthy.value);
  if (!state.ok) throw new Error(`the vehicle ${document.id} does not settle: ${state.error.code}`);
  const chart = terminalChart(healthy.value, systemId);
  if (!chart.ok) throw new Error(`the chart of ${document.id} cannot be worked out: ${chart.error.code}`);
  const titles = new Map(testPoints(healthy.value, state.value).map(({ id, title }) => [id, title]));
  return chart.value.map(({ row, value, unit }, index) => ({
    key: String(index),
    point: row.point,
    pointTitle: titles.get(row.point) ?? row.point,
    againstTitle: row.against === undefined ? "" : (titles.get(row.against) ?? row.against),
    function: row.function,
    conditionTitle: row.conditionTitle,
    unplugged: row.unplugged ?? [],
    value: unit === "V" ? formatVolts(value) : formatOhms(value),
  }));
}

function codesOf(document: VehicleDocument): ServiceView["codes"] {
  return document.components.flatMap((part) =>
    part.kind !== "module"
      ? []
      : (part.monitors ?? []).map((monitor) => ({
          key: `${part.id} ${monitor.code}`,
          module: `${part.id} ${part.title}`,
          code: monitor.code,
          text: monitor.text,
          causes: monitor.causes ?? [],
          warningLamp: monitor.warningLamp,
        })),
  );
}

function connectorOf(document: VehicleDocument, connector: Connector): ServiceView["connectors"][number] {
  const { id, title, place, housing, component } = connector;
  return {
    id,
    title,
    place: place ?? null,
    housing: housing ?? null,
    component: component ?? null,
    cautions: connectorCautions(document, connector),
    cavities: connector.cavities.map(({ cavity, terminal }) => {
      const end = `${id}.${cavity}`;
      const conductor = document.conductors.find(
        (candidate) => candidate.from === end || candidate.to === end,
      );
      return {
        cavity,
        terminal: terminal ?? null,
        function: functionOf(document, component, terminal),
        conductor: conductor?.id ?? null,
        colour: conductor?.colour ?? null,
        squareMillimetres: conductor?.squareMillimetres ?? null,
      };
    }),
  };
}

function functionOf(
  document: VehicleDocument,
  component: string | undefined,
  terminal: string | undefined,
): string | null {
  const part = document.components.find((candidate) => candidate.id === component);
  if (part === undefined || terminal === undefined) return null;
  if (part.kind === "module") return part.terminals.find(({ name }) => name === terminal)?.function ?? null;
  if (part.kind === "torqueSensor") {
    const { supply, ground, signal1, signal2 } = part.terminals;
    const functions: Record<string, string> = {
      [supply]: "Sensor supply",
      [ground]: "Sensor ground",
      [signal1]: "Torque signal 1",
      [signal2]: "Torque signal 2",
    };
    return functions[terminal] ?? null;
  }
  return `${part.title}, terminal ${terminal}`;
}
