import "server-only";
import type { Connector, VehicleDocument } from "@probeworthy/vehicle";
import { type ServiceView, serviceViewSchema } from "@/features/service-information/service-view";
import { BoundedCache } from "../services/attempts/bounded-cache";
import { connectorCautions, fuseCautions } from "./part-cautions";

const made = new BoundedCache<ServiceView>(16);

/**
 * The service information of every system, without the terminal charts, which are worked out when they are opened. Made
 * from the healthy document only, so it is the same for every attempt; a vehicle version never changes.
 */
export function serviceViewOf(versionId: string, document: VehicleDocument): ServiceView {
  const known = made.get(versionId);
  if (known !== undefined) return known;
  const view = makeServiceView(document);
  made.set(versionId, view);
  return view;
}

function makeServiceView(document: VehicleDocument): ServiceView {
  return serviceViewSchema.parse({
    systems: document.systems.map((system) => {
      const { id, title, howItWorks, normalSurprises, cautions } = system;
      const own = new Set(system.components);
      return {
        id,
        title,
        howItWorks,
        normalSurprises,
        cautions,
        codes: codesOf(document, own),
        places: placesOf(document, own),
        connectors: document.connectors
          .filter(({ component }) => component !== undefined && own.has(component))
          .map((connector) => connector.id),
      };
    }),
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

type SystemOfView = ServiceView["systems"][number];

const placesOf = (document: VehicleDocument, own: ReadonlySet<string>): SystemOfView["places"] =>
  document.components
    .filter(({ id }) => own.has(id))
    .map(({ id, title, place, zone }) => ({ id, title, place: place ?? null, zone: zone ?? null }));

function codesOf(document: VehicleDocument, own: ReadonlySet<string>): SystemOfView["codes"] {
  return document.components.flatMap((part) =>
    part.kind !== "module" || !own.has(part.id)
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
