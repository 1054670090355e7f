import { type FieldSpec, list, number, other, text } from "./field-spec";

const name = text("name", "Name", { code: true });
const between = other("pair", "between", "Between", { hint: "Terminals or inner nodes." });

/** The form of a component put together from simple parts. */
export const composedFields: readonly FieldSpec[] = [
  other("names", "terminals", "Terminals", { hint: "Parted by spaces." }),
  other("names", "innerNodes", "Inner nodes", {
    optional: true,
    hint: "Names of points inside that no terminal reaches; they start with a small letter.",
  }),
  list("parts", "Parts", {
    item: "part",
    nameKey: "name",
    shapes: [
      {
        kind: "resistor",
        label: "Resistor",
        start: { name: "resistor", between: ["1", "2"], ohms: 100 },
        fields: [
          name,
          between,
          other("expression", "ohms", "Resistance, Ω", { hint: "A number, or a formula of conditions." }),
        ],
      },
      {
        kind: "curve",
        label: "Current-voltage curve",
        start: {
          name: "curve",
          between: ["1", "2"],
          points: [
            [-1, 0],
            [0, 0],
            [1, 0.1],
          ],
        },
        fields: [name, between, other("points", "points", "Points of its curve", { columns: ["V", "A"] })],
      },
      {
        kind: "switch",
        label: "Switch",
        start: { name: "contact", between: ["1", "2"], closed: 1, contactOhms: 0.01 },
        fields: [
          name,
          between,
          other("expression", "closed", "Closed while", { hint: "For example roadSpeed > 5." }),
          number("contactOhms", "Contact resistance", "Ω"),
        ],
      },
      {
        kind: "diode",
        label: "Diode",
        start: { name: "diode", between: ["1", "2"] },
        fields: [
          name,
          { ...between, hint: "Anode first, then cathode." },
          number("breakdownVolts", "Breaks down at", "V", { optional: true }),
        ],
      },
      {
        kind: "source",
        label: "Voltage source",
        start: { name: "source", between: ["1", "2"], volts: 5, ohms: 100 },
        fields: [
          name,
          { ...between, hint: "Plus first, then minus." },
          other("expression", "volts", "Voltage, V"),
          number("ohms", "Internal resistance", "Ω"),
        ],
      },
      {
        kind: "threshold",
        label: "Contact that closes at a voltage",
        start: {
          name: "threshold",
          between: ["1", "2"],
          senses: ["1", "2"],
          thresholdVolts: 6,
          hysteresisVolts: 0.5,
          contactOhms: 0.01,
        },
        fields: [
          name,
          between,
          other("pair", "senses", "Watches the voltage over"),
          number("thresholdVolts", "Threshold", "V"),
          number("hysteresisVolts", "Hysteresis", "V"),
          other("flag", "closesBelow", "Closes below the threshold", { optional: true }),
          number("contactOhms", "Contact resistance", "Ω"),
        ],
      },
    ],
  }),
];
