import type { Component, VehicleDocument } from "@probeworthy/vehicle";

/** Where conductors meet: `A1:T1` a component terminal, `XS1` a splice, `XE1` a ground point, `X7.2` an in-line cavity. */
export interface End {
  readonly joint: string;
  readonly kind: "terminal" | "splice" | "ground" | "inline";
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

/** Terminals of a component in the order its symbol shows them, with what each is for where the document says so. */
export function componentTerminals(component: Component): readonly { name: string; function?: string }[] {
  switch (component.kind) {
    case "battery":
      return [{ name: "+" }, { name: "-" }];
    case "chargingSource":
      return [{ name: "B+" }, { name: "31" }];
    case "switch":
      return component.terminals.map((name) => ({ name }));
    case "torqueSensor": {
      const { supply, ground, signal1, signal2 } = component.terminals;
      return [
        { name: supply, function: "Supply" },
        { name: signal1, function: "Signal 1" },
        { name: signal2, function: "Signal 2" },
        { name: ground, function: "Ground" },
      ];
    }
    case "passive":
      return component.terminals.map((name) => ({ name }));
    case "module":
      return component.terminals;
    default:
      return [{ name: "1" }, { name: "2" }];
  }
}
