import type { CircuitElement } from "@probeworthy/circuit";
import { type Draw, type DrawDevice, resistor } from "./random-draw";

/** What hangs between two neighbours of the harness, behind a resistance where it would short them. */
export const partDraws = {
  hotWires: (i, { pair, random }) => {
    const [a, b] = pair();
    const ohms = random.decades(0.1, 1e4);
    const law = { temperatureCoefficient: 0.00393, celsius: random.between(-30, 120) };
    return [{ kind: "resistor", id: `hotWire${i}`, a, b, ohms, ...law }];
  },
  capacitors: (i, { pair, random }) => {
    const [a, b] = pair();
    return [{ kind: "capacitor", id: `capacitor${i}`, a, b, farads: random.decades(1e-9, 1e-3) }];
  },
  inductors: (i, draw) =>
    behind(i, "inductor", draw, [0.5, 1e3], (a, b) => ({
      kind: "inductor",
      id: `inductor${i}`,
      a,
      b,
      henries: draw.random.decades(1e-6, 1),
    })),
  leds: (i, draw) =>
    behind(i, "led", draw, [100, 2e3], (anode, cathode) => ({
      kind: "led",
      id: `led${i}`,
      anode,
      cathode,
      ratedVolts: draw.random.between(1.7, 3.3),
      ratedAmps: draw.random.decades(2e-3, 0.1),
      celsius: draw.random.between(-20, 80),
    })),
  zeners: (i, draw) =>
    behind(i, "zener", draw, [50, 1e3], (anode, cathode) => ({
      kind: "zener",
      id: `zener${i}`,
      anode,
      cathode,
      breakdownVolts: draw.random.between(3, 15),
      dynamicOhms: draw.random.between(5, 40),
    })),
  curves: (i, { pair, random }) => {
    const [a, b] = pair();
    const factor = random.decades(1e-4, 1e-2);
    const points = Array.from({ length: 13 }, (_, k) => [k, factor * k * k] as const);
    return [{ kind: "curve", id: `curve${i}`, a, b, points }];
  },
  thermistors: (i, { pair, random }) => {
    const [a, b] = pair();
    const celsius = Math.round(random.between(-30, 120));
    const laws = [
      { platinumOhms: random.chance(0.5) ? 100 : 1000 },
      { steinhartHart: { a: 1.1e-3, b: 2.4e-4, c: 8e-8 } },
      { table: [[celsius - 20, 5e3] as const, [celsius, 2e3] as const, [celsius + 30, 600] as const] },
    ];
    const law = laws[i % 3];
    return [{ kind: "thermistor", id: `thermistor${i}`, a, b, celsius, ...law }];
  },
  fuses: (i, { pair, random }) => {
    const [a, b] = pair();
    const ratedAmps = random.integer(2, 40);
    const coldOhms = random.between(0.05, 0.1) / ratedAmps;
    const ratedDropVolts = coldOhms * ratedAmps * random.between(1.1, 2.2);
    const law = { ratedAmps, coldOhms, ratedDropVolts, isBlown: random.chance(0.3) };
    return [{ kind: "fuse", id: `fuse${i}`, a, b, type: "C", ...law }];
  },
} satisfies Record<string, DrawDevice>;

/** A part with a resistance before it, between two neighbours. */
function behind(
  i: number,
  name: string,
  { pair, random }: Draw,
  [least, most]: readonly [number, number],
  make: (a: string, b: string) => CircuitElement,
): readonly CircuitElement[] {
  const [a, b] = pair();
  const inner = `${name}Node${i}`;
  return [resistor(`${name}Feed${i}`, a, inner, random.decades(least, most)), make(inner, b)];
}
