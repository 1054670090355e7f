import type { ComponentOf } from "../../document/component";
import { openOhms } from "../fault-overlay";
import type { NetworkBuilder } from "../network-builder";

/** One contact for each pair of terminals that some position joins. */
export function compileSwitch(component: ComponentOf<"switch">, builder: NetworkBuilder): void {
  const { id } = component;
  const name = ([a, b]: readonly [string, string]): string => [a, b].sort().join("-");
  const closedIn = new Map<string, { pair: readonly [string, string]; positions: Set<string> }>();
  for (const [position, pairs] of Object.entries(component.positions)) {
    for (const pair of pairs) {
      const entry = closedIn.get(name(pair)) ?? { pair, positions: new Set<string>() };
      entry.positions.add(position);
      closedIn.set(name(pair), entry);
    }
  }
  for (const [key, { pair, positions }] of closedIn) {
    const element = `${id}#${key}`;
    builder.resistor(element, builder.inside(id, pair[0]), builder.inside(id, pair[1]), openOhms);
    builder.update((world, set) =>
      set.ohms(element, positions.has(world.choice(component.condition)) ? component.contactOhms : openOhms),
    );
  }
}
