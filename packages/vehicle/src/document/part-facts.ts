import type { Component, ComponentOf } from "./component";
import type { Connector } from "./vehicle-document";

/** A relay that stands in a socket; one with terminals of its own (a solenoid) is bolted on. */
export const isPluggable = (relay: ComponentOf<"relay">): boolean => relay.terminals === undefined;

/** Terminals of a sensor's analogue outputs. */
export function sensorChannels(component: Component | undefined): string[] {
  if (component?.kind === "torqueSensor") return [component.terminals.signal1, component.terminals.signal2];
  if (component?.kind === "positionSensor") return component.tracks.map(({ signal }) => signal);
  return [];
}

/** Pairs of cavities side by side or one above the other; cavities are numbered row by row. */
export function neighbours({ cavities, columns }: Connector): [string, string][] {
  const places = new Map(
    cavities.map(({ cavity }, order) => {
      const number = /^[0-9]+$/.test(cavity) ? Number(cavity) - 1 : order;
      return [number, cavity] as const;
    }),
  );
  return [...places].flatMap(([number, cavity]): [string, string][] => {
    const right = (number + 1) % columns === 0 ? undefined : places.get(number + 1);
    const under = places.get(number + columns);
    return [right, under].flatMap((other): [string, string][] =>
      other === undefined ? [] : [[cavity, other]],
    );
  });
}
