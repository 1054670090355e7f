import type { ComponentOf } from "../document/component";
import type { VehicleDocument } from "../document/vehicle-document";
import { terminalsOf, type VehicleIndex } from "../document/vehicle-index";
import type { DocumentMessage } from "../simulation/types";
import { copperLinks, type Link, reach } from "./nets";

/** Terminals, cavities and splices that lead nowhere, and sensors and modules without a way back to ground. */
export function checkConnections(document: VehicleDocument, index: VehicleIndex): DocumentMessage[] {
  const links = copperLinks(document, index, { switches: false });
  return [...checkEnds(document, index), ...checkReturns(document, links)];
}

function checkEnds(document: VehicleDocument, index: VehicleIndex): DocumentMessage[] {
  const messages: DocumentMessage[] = [];
  const wired = new Set<string>();
  document.connectors.forEach((connector, position) => {
    connector.cavities.forEach(({ cavity, terminal }, number) => {
      const has = (face: string): boolean => index.conductorsAt.has(`${connector.id}.${cavity}:${face}`);
      const path = `connectors[${position}].cavities[${number}]`;
      if (connector.component === undefined) {
        if (has("h") !== has("b"))
          messages.push({
            severity: "warning",
            path,
            message: `only one side of cavity ${cavity} of ${connector.id} carries a conductor`,
          });
        return;
      }
      if (terminal !== undefined && has("h")) wired.add(`${connector.component}:${terminal}`);
      if (terminal === undefined && has("h"))
        messages.push({
          severity: "warning",
          path,
          message: `the conductor in cavity ${cavity} of ${connector.id} meets no terminal; name the terminal behind it`,
        });
    });
  });
  document.components.forEach((component, position) => {
    if (component.kind === "passive") return; // sockets and joint boxes may keep spare terminals
    for (const terminal of terminalsOf(component)) {
      const id = `${component.id}:${terminal}`;
      if (wired.has(id) || index.conductorsAt.has(id)) continue;
      messages.push({
        severity: component.kind === "module" || component.kind === "switch" ? "warning" : "error",
        path: `components[${position}]`,
        message: `terminal ${terminal} of ${component.id} is floating: no conductor reaches it`,
      });
    }
  });
  document.splices.forEach(({ id }, position) => {
    if ((index.conductorsAt.get(id)?.length ?? 0) < 2)
      messages.push({
        severity: "warning",
        path: `splices[${position}]`,
        message: `splice ${id} joins fewer than two conductors`,
      });
  });
  return messages;
}

/** Terminals a module joins to its own ground inside, where a sensor's return may end. */
const groundTerminals = (module: ComponentOf<"module">): string[] => [
  `${module.id}:${module.ground}`,
  ...(module.groundLinks ?? []).map(({ terminal }) => `${module.id}:${terminal}`),
];

function checkReturns(document: VehicleDocument, links: readonly Link[]): DocumentMessage[] {
  const returns = new Set<string>(["body"]);
  for (const component of document.components) {
    if (component.kind === "module") for (const node of groundTerminals(component)) returns.add(node);
    if (component.kind === "battery") returns.add(`${component.id}:-`);
  }
  const comesHome = (node: string): boolean =>
    [...reach(node, links).nodes].some((found) => returns.has(found));
  const reachesBody = (node: string): boolean => reach(node, links).nodes.has("body");
  return document.components.flatMap((component, position): DocumentMessage[] => {
    const path = `components[${position}]`;
    if (component.kind === "torqueSensor" && !comesHome(`${component.id}:${component.terminals.ground}`))
      return [
        {
          severity: "error",
          path: `${path}.terminals.ground`,
          message: `sensor ${component.id} has no return: lead ${component.terminals.ground} to a module's ground terminal or to a ground point`,
        },
      ];
    if (
      component.kind === "thermistor" &&
      !["1", "2"].some((terminal) => comesHome(`${component.id}:${terminal}`))
    )
      return [
        {
          severity: "error",
          path,
          message: `sensor ${component.id} has no return: lead terminal 1 or 2 to a module's ground terminal or to a ground point`,
        },
      ];
    if (component.kind === "module" && !groundTerminals(component).some(reachesBody))
      return [
        {
          severity: "error",
          path: `${path}.ground`,
          message: `no ground terminal of ${component.id} reaches the body; lead ${component.ground} to a ground point`,
        },
      ];
    return [];
  });
}
