import { type Component, relayTerminals, terminalsOf, type VehicleDocument } from "@probeworthy/vehicle";

/** Where conductors meet: `A1:T1` a component terminal, `XS1` a splice, `XE1` a ground point, `X7.2` an in-line cavity. */
export interface End {
  readonly joint: string;
  /** `bar`: a fuse box bar whose own feed is on another sheet. `reference`: goes on at `owner` on another sheet. */
  readonly kind: "terminal" | "splice" | "ground" | "inline" | "bar" | "reference";
  /** Component, splice, ground point or in-line connector. */
  readonly owner: string;
  readonly terminal?: string;
  readonly connector?: string;
  readonly cavity?: string;
  readonly face?: "h" | "b";
}

export interface ResolvedConductor {
  readonly id: string;
  readonly from: End;
  readonly to: End;
}

/** Resolves a conductor end as written in the document; undefined when it names nothing that exists. */
export function resolveEnd(document: VehicleDocument, end: string): End | undefined {
  const cavityMatch = /^([A-Z0-9a-z]+)\.([A-Z0-9]+)(\/b)?$/.exec(end);
  if (cavityMatch !== null) {
    const [, connectorId, cavity, second] = cavityMatch;
    const connector = document.connectors.find((candidate) => candidate.id === connectorId);
    if (connector === undefined || cavity === undefined) return undefined;
    const { id, component } = connector;
    const listed = connector.cavities.find((candidate) => candidate.cavity === cavity);
    if (component === undefined) {
      const face = second === undefined ? "h" : "b";
      return { joint: `${id}.${cavity}`, kind: "inline", owner: id, connector: id, cavity, face };
    }
    const terminal = listed?.terminal;
    return {
      joint: terminal === undefined ? `${id}.${cavity}` : `${component}:${terminal}`,
      kind: "terminal",
      owner: component,
      ...(terminal === undefined ? {} : { terminal }),
      connector: id,
      cavity,
    };
  }
  const [owner, terminal] = end.split(":");
  if (owner === undefined) return undefined;
  if (terminal !== undefined) {
    if (!document.components.some((component) => component.id === owner)) return undefined;
    return { joint: end, kind: "terminal", owner, terminal };
  }
  if (document.splices.some((splice) => splice.id === end)) return { joint: end, kind: "splice", owner: end };
  if (document.groundPoints.some((ground) => ground.id === end)) {
    return { joint: end, kind: "ground", owner: end };
  }
  return undefined;
}

/** What the terminals of a component are for, where its kind says so. */
function terminalFunctions(component: Component): ReadonlyMap<string, string> {
  switch (component.kind) {
    case "torqueSensor": {
      const { supply, ground, signal1, signal2 } = component.terminals;
      return new Map([
        [supply, "Supply"],
        [signal1, "Signal 1"],
        [signal2, "Signal 2"],
        [ground, "Ground"],
      ]);
    }
    case "positionSensor": {
      const several = component.tracks.length > 1;
      return new Map(
        component.tracks.flatMap(({ supply, ground, signal }, index): [string, string][] => [
          [supply, "Supply"],
          [ground, "Ground"],
          [signal, several ? `Signal ${index + 1}` : "Signal"],
        ]),
      );
    }
    case "module":
      return new Map(component.terminals.map((terminal) => [terminal.name, terminal.function]));
    default:
      return new Map();
  }
}

/** Terminals of a component in the order its symbol shows them, with what each is for where the document says so. */
export function componentTerminals(component: Component): readonly { name: string; function?: string }[] {
  const functions = terminalFunctions(component);
  const names =
    component.kind === "torqueSensor"
      ? [...functions.keys()]
      : component.kind === "relay"
        ? relayOrder(component)
        : terminalsOf(component);
  return names.map((name) => {
    const purpose = functions.get(name);
    return purpose === undefined ? { name } : { name, function: purpose };
  });
}

/** Coil first, then the contact. */
function relayOrder(relay: Extract<Component, { kind: "relay" }>): readonly string[] {
  const { coilPlus, coilMinus, common, make, break: rest } = relayTerminals(relay);
  return [...new Set([coilPlus, coilMinus, common, ...(rest === undefined ? [] : [rest]), make])];
}
