import type { Comparator } from "../kinds/comparator";
import type { ElementDefinition } from "./definition";
import { finite, flag, positive } from "./rules";

/** States: 0 open, 1 closed. */
export const comparatorDefinition: ElementDefinition<Comparator> = {
  fields: {
    thresholdVolts: finite,
    hysteresisVolts: positive,
    closesBelow: flag,
    initiallyClosed: flag,
    closedOhms: positive,
    openOhms: positive,
    inputOhms: positive,
  },
  required: ["thresholdVolts"],
  terminals: ({ a, b, positive: plus, negative }) => [a, b, plus, negative],
  parts: ({ id, a, b, positive: plus, negative, closedOhms = 1, openOhms = 1e9, inputOhms = 1e9 }, state) => [
    { kind: "switch", id: `${id}#contact`, a, b, closed: state === 1, closedOhms, openOhms },
    { kind: "resistor", id: `${id}#input`, a: plus, b: negative, ohms: inputOhms },
  ],
  amps: ({ id }) => [[`${id}#contact`, 1]],
  initialState: ({ initiallyClosed = false }) => (initiallyClosed ? 1 : 0),
  guards(
    { positive: plus, negative, thresholdVolts, hysteresisVolts = 0.1, closesBelow = false },
    state,
    look,
  ) {
    const beyond = look.volts(plus) - look.volts(negative) - thresholdVolts;
    const falls = closesBelow === (state === 0);
    // The next change is due on the way down for a closed contact that closes above, and an open one that closes below.
    const value = (falls ? -beyond : beyond) - hysteresisVolts / 2;
    return [{ value, next: state === 0 ? 1 : 0 }];
  },
  quantities: (_element, state) => ({ isClosed: state }),
};
