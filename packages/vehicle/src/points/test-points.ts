import { requireCompiled } from "../compile/compile-vehicle";
import type { Component } from "../document/component";
import { isPluggable } from "../document/part-facts";
import type { Connector } from "../document/vehicle-document";
import { terminalsOf, type VehicleIndex } from "../document/vehicle-index";
import type { PreparedVehicle, TestPoint, VehicleState } from "../simulation/types";

/**
 * Every point a lead could touch, in the order of the document, with whether it can be reached now and, if not, why.
 * A cavity is listed when a conductor or a component terminal is in it.
 */
export function testPoints(vehicle: PreparedVehicle, state: VehicleState): TestPoint[] {
  const { document, index } = requireCompiled(vehicle);
  return [
    { id: "body", title: "Bare body metal", owner: "body", accessible: true },
    ...document.connectors.flatMap((connector) => cavityPoints(connector, index, state)),
    ...document.components.flatMap((component) =>
      component.kind === "fuse"
        ? fusePoints(component.id, index, state)
        : terminalsOf(component).flatMap((terminal) => terminalPoint(component, terminal, index, state)),
    ),
    ...document.groundPoints.flatMap(({ id }): TestPoint[] => [
      {
        id: `${id}:ring`,
        title: `${id} ring terminal`,
        owner: id,
        ...conductorAt(`${id}:ring`, index),
        accessible: true,
      },
      { id: `${id}:body`, title: `${id} bare metal beside the ring`, owner: id, accessible: true },
    ]),
    ...document.splices.map(
      ({ id }): TestPoint => ({
        id,
        title: `Splice ${id}`,
        owner: id,
        accessible: false,
        reason: `${id} lies inside the taped loom`,
      }),
    ),
  ];
}

function conductorAt(point: string, index: VehicleIndex): { conductor?: string } {
  const conductor = index.conductorsAt.get(point)?.[0];
  return conductor ? { conductor: conductor.id } : {};
}

function cavityPoints(connector: Connector, index: VehicleIndex, state: VehicleState): TestPoint[] {
  const { id } = connector;
  const apart = state.unplugged.includes(id);
  const inline = connector.component === undefined;
  return connector.cavities.flatMap(({ cavity, terminal }) => {
    const place = `${id}.${cavity}`;
    const wired = (face: string): boolean => index.conductorsAt.has(`${place}:${face}`);
    const harness = (face: "h" | "b", side: string): TestPoint => {
      const reachable = wired(face) || apart;
      return {
        id: `${place}:${face}`,
        title: `${id} cavity ${cavity}, ${side}`,
        owner: id,
        ...conductorAt(`${place}:${face}`, index),
        accessible: reachable,
        ...(reachable ? {} : { reason: `no conductor in cavity ${cavity} of ${id} to back-probe` }),
      };
    };
    if (inline)
      return wired("h") || wired("b") ? [harness("h", "first side"), harness("b", "second side")] : [];
    if (terminal === undefined) return wired("h") ? [harness("h", "harness side")] : [];
    return [
      harness("h", "harness side"),
      {
        id: `${place}:c`,
        title: `${id} cavity ${cavity}, component side`,
        owner: id,
        accessible: apart,
        ...(apart ? {} : { reason: `${id} is plugged in: unplug it, or back-probe the harness side` }),
      },
    ];
  });
}

/**
 * A terminal with a conductor bolted or soldered to it; terminals behind connectors are reached at the connector. A
 * battery's posts stand out of their clamps: from post to clamp is how a dirty clamp is found.
 */
function terminalPoint(
  component: Component,
  terminal: string,
  index: VehicleIndex,
  state: VehicleState,
): TestPoint[] {
  const id = `${component.id}:${terminal}`;
  if (!index.conductorsAt.has(id) && component.kind !== "battery") return [];
  const socket = component.kind === "relay" && isPluggable(component);
  const empty = state.pulledFuses.includes(component.id);
  return [
    {
      id,
      title: socket
        ? `${component.id} socket ${terminal}${empty ? "" : ", beside the blade"}`
        : `${component.id} terminal ${terminal}`,
      owner: component.id,
      ...conductorAt(id, index),
      accessible: true,
    },
  ];
}

function fusePoints(id: string, index: VehicleIndex, state: VehicleState): TestPoint[] {
  const pulled = state.pulledFuses.includes(id);
  return ["1", "2"].flatMap((terminal): TestPoint[] => [
    {
      id: `${id}:${terminal}`,
      title: pulled ? `${id} holder, socket ${terminal}` : `${id} test window ${terminal}`,
      owner: id,
      ...conductorAt(`${id}:${terminal}`, index),
      accessible: true,
    },
    {
      id: `${id}:${terminal}:p`,
      title: `${id} pulled fuse, blade ${terminal}`,
      owner: id,
      accessible: pulled,
      ...(pulled ? {} : { reason: `${id} is in its holder: pull it to reach its blades` }),
    },
  ]);
}
