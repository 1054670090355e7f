import type { Resistor } from "@probeworthy/circuit";
import { type DrawDevice, resistor } from "./random-draw";
import { partDraws } from "./random-parts";
import { unitDraws } from "./random-units";

/** A new kind of device is one function here; its name becomes a field of RandomNetworkShape. */
export const draws = {
  diodes: (i, { pair, random }) => {
    const [anode, cathode] = pair();
    const law = {
      saturationAmps: random.decades(1e-15, 1e-10),
      emission: random.between(1, 2),
      celsius: random.between(-20, 80),
    };
    const zener = random.chance(0.2) ? { breakdownVolts: random.between(3, 30) } : {};
    const series = random.chance(0.5) ? { seriesOhms: random.decades(0.01, 10) } : {};
    return [{ kind: "diode", id: `diode${i}`, anode, cathode, ...law, ...zener, ...series }];
  },
  switches: (i, { pair, random }) => {
    const [a, b] = pair();
    return [{ kind: "switch", id: `switch${i}`, a, b, closed: random.chance(0.5), closedOhms: 0.02 }];
  },
  filaments: (i, { pair, random }) => {
    const [a, b] = pair();
    return [{ kind: "filament", id: `lamp${i}`, a, b, ratedVolts: 12, ratedWatts: random.between(2, 55) }];
  },
  currentSources: (i, { pair, random }) => {
    const [from, to] = pair();
    return [{ kind: "currentSource", id: `amps${i}`, from, to, amps: random.decades(1e-6, 1e-2) }];
  },
  regulators: (i, { nearSupply, random, ground }) => {
    const output = `rail${i}`;
    const input = nearSupply();
    const volts = random.chance(0.5) ? 5 : 8;
    const limitAmps = random.decades(0.02, 1);
    const load = resistor(`railLoad${i}`, output, ground, random.decades(10, 1e5));
    const outputOhms = random.decades(0.01, 1);
    const law = { volts, limitAmps, quiescentAmps: 3e-3, outputOhms };
    return [load, { kind: "regulator", id: `regulator${i}`, input, output, reference: ground, ...law }];
  },
  controlledSources: (i, draw) => drawControlledSource(i, draw),
  ...partDraws,
  ...unitDraws,
} satisfies Record<string, DrawDevice>;

export type RandomDevice = keyof typeof draws;

/**
 * A controlled source drives a node of its own, with a load, that is coupled back into the harness. It answers a
 * difference of two harness voltages with less than half of it, and resistances only ever divide: so however many loops
 * there are, what comes back is smaller than what went out, and there is one answer.
 */
const drawControlledSource: DrawDevice = (i, { elements, pair, random, ground }) => {
  const output = `controlled${i}`;
  const share = random.between(-0.45, 0.45);
  const loadOhms = random.decades(10, 1e4);
  const ends = { positive: output, negative: ground };
  const id = `source${i}`;
  const around = [
    resistor(`controlledLoad${i}`, output, ground, loadOhms),
    resistor(`coupling${i}`, output, pair().find((node) => node !== ground) ?? "n1", random.decades(10, 1e4)),
  ];
  const [controlPositive, controlNegative] = pair();
  const trees = elements.filter((e): e is Resistor => e.kind === "resistor" && e.id.startsWith("tree"));
  const sensed = trees[random.integer(0, trees.length - 1)];
  const type = (["vcvs", "vccs", "ccvs", "cccs"] as const)[i % 4] ?? "vcvs";
  if (sensed === undefined) throw new Error("A harness of two nodes has no wire to sense.");
  const byVolts = { controlPositive, controlNegative };
  const byAmps = { controlElement: sensed.id };
  const law = {
    vcvs: { gain: share, ...byVolts },
    vccs: { gain: share / loadOhms, ...byVolts },
    ccvs: { gain: share * sensed.ohms, ...byAmps },
    cccs: { gain: (share * sensed.ohms) / loadOhms, ...byAmps },
  }[type];
  return [...around, { kind: "controlledSource", id, type, ...ends, ...law }];
};
