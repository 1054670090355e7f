import type { ComponentOf } from "../../document/component";
import { compileExpression } from "../../simulation/evaluate";
import { openOhms } from "../fault-overlay";
import type { NetworkBuilder } from "../network-builder";

/** A resistance an expression may ask for; less would be no resistor. */
const leastOhms = 1e-6;

/** Each part as an element of the circuit, `X#name`, between terminals and inner nodes. */
export function compileComposed(component: ComponentOf<"composed">, builder: NetworkBuilder): void {
  const { id, terminals, parts } = component;
  const node = (name: string): string =>
    terminals.includes(name) ? builder.inside(id, name) : builder.node(`${id}#node:${name}`);
  for (const part of parts) {
    const element = `${id}#${part.name}`;
    const [a, b] = [node(part.between[0]), node(part.between[1])];
    switch (part.kind) {
      case "resistor": {
        const ohms = compileExpression(part.ohms);
        builder.resistor(element, a, b, openOhms);
        builder.update((world, set) =>
          set.ohms(element, Math.min(openOhms, Math.max(leastOhms, ohms(world.readings)))),
        );
        break;
      }
      case "switch": {
        const closed = compileExpression(part.closed);
        builder.resistor(element, a, b, openOhms);
        builder.update((world, set) =>
          set.ohms(element, closed(world.readings) > 0.5 ? part.contactOhms : openOhms),
        );
        break;
      }
      case "curve":
        builder.add({ kind: "curve", id: element, a, b, points: part.points });
        break;
      case "diode":
        builder.add({
          kind: "diode",
          id: element,
          anode: a,
          cathode: b,
          ...(part.breakdownVolts === undefined ? {} : { breakdownVolts: part.breakdownVolts }),
        });
        break;
      case "source": {
        const volts = compileExpression(part.volts);
        builder.add({
          kind: "voltageSource",
          id: element,
          positive: a,
          negative: b,
          volts: 0,
          ohms: part.ohms,
        });
        builder.update((world, set) => set.volts(element, volts(world.readings)));
        break;
      }
      case "threshold":
        builder.add({
          kind: "comparator",
          id: element,
          a,
          b,
          positive: node(part.senses[0]),
          negative: node(part.senses[1]),
          thresholdVolts: part.thresholdVolts,
          hysteresisVolts: part.hysteresisVolts,
          closesBelow: part.closesBelow ?? false,
          closedOhms: part.contactOhms,
        });
        break;
    }
  }
}
