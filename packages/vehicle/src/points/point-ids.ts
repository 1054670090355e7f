import { terminalsOf, type VehicleIndex } from "../document/vehicle-index";
import type { PointId } from "../simulation/types";

/** A point id taken apart and found in the document. */
export type ParsedPoint =
  | { readonly kind: "body" }
  | {
      readonly kind: "cavity";
      readonly connector: string;
      readonly cavity: string;
      readonly face: "h" | "c" | "b";
    }
  | { readonly kind: "terminal"; readonly component: string; readonly terminal: string }
  | { readonly kind: "blade"; readonly fuse: string; readonly terminal: string }
  | { readonly kind: "ground"; readonly groundPoint: string; readonly side: "ring" | "body" }
  | { readonly kind: "splice"; readonly splice: string };

/** Takes a point id apart; `undefined` when the document has no such point. Ids are those described at `PointId`. */
export function parsePoint(id: PointId, index: VehicleIndex): ParsedPoint | undefined {
  if (id === "body") return { kind: "body" };
  const cavity = /^([A-Z0-9a-z]+)\.([A-Z0-9]{1,3}):([hcb])$/.exec(id);
  if (cavity) {
    const [, connectorId = "", name = "", face = ""] = cavity;
    const connector = index.connectors.get(connectorId);
    const entry = connector?.cavities.find((candidate) => candidate.cavity === name);
    if (!connector || !entry) return undefined;
    const inline = connector.component === undefined;
    if (face === "b" ? !inline : face === "c" && (inline || entry.terminal === undefined)) return undefined;
    return { kind: "cavity", connector: connectorId, cavity: name, face: face as "h" | "c" | "b" };
  }
  const [owner = "", terminal, blade, ...rest] = id.split(":");
  if (rest.length > 0) return undefined;
  if (terminal === undefined) return index.splices.has(owner) ? { kind: "splice", splice: owner } : undefined;
  if (index.groundPoints.has(owner))
    return (terminal === "ring" || terminal === "body") && blade === undefined
      ? { kind: "ground", groundPoint: owner, side: terminal }
      : undefined;
  const component = index.components.get(owner);
  if (!component || !terminalsOf(component).includes(terminal)) return undefined;
  if (blade === undefined) return { kind: "terminal", component: owner, terminal };
  return blade === "p" && component.kind === "fuse" ? { kind: "blade", fuse: owner, terminal } : undefined;
}

export const pointExists = (id: PointId, index: VehicleIndex): boolean => parsePoint(id, index) !== undefined;

/**
 * The electrical node of a point. Several points share one node: the component face of a cavity and the component
 * terminal behind it; every bare-metal point and `body`.
 */
export function nodeOf(point: ParsedPoint, index: VehicleIndex): string {
  switch (point.kind) {
    case "body":
      return "body";
    case "ground":
      return point.side === "body" ? "body" : `${point.groundPoint}:ring`;
    case "splice":
      return point.splice;
    case "terminal":
      return `${point.component}:${point.terminal}`;
    case "blade":
      return `${point.fuse}:${point.terminal}:p`;
    case "cavity": {
      const id = `${point.connector}.${point.cavity}`;
      if (point.face !== "c") return `${id}:${point.face}`;
      const connector = index.connectors.get(point.connector);
      const entry = connector?.cavities.find((candidate) => candidate.cavity === point.cavity);
      return `${connector?.component}:${entry?.terminal}`;
    }
  }
}
