import type { OperatingPoint } from "../circuit";
import type { CircuitElement } from "../network";
import { windingOhmsFactor } from "../physics/copper-winding";
import type { Recording } from "../transient/options";
import type { Waveforms } from "../transient/transient-circuit";

/** Kinds that give back what they were given; every other passive kind only takes, at every moment. */
const storing = new Set(["capacitor", "inductor", "motor", "relay"]);
export const stores = ({ kind }: CircuitElement): boolean => storing.has(kind);

/** What `storedJoules` needs besides the nodes' volts and the elements' amps. */
export const recordingOf = (elements: readonly CircuitElement[], volts: readonly string[]): Recording => ({
  volts,
  amps: elements.map(({ id }) => id),
  quantities: elements.flatMap(({ kind, id }) => {
    const names: Partial<Record<typeof kind, string>> = {
      motor: "radiansPerSecond",
      relay: "ampsCoil",
      switchingPtc: "celsius",
      battery: "stateOfCharge",
    };
    const name = names[kind];
    return name === undefined ? [] : [{ element: id, name }];
  }),
});

/** Figures of a network at one moment; those of an operating point have the same shape. */
export type Moment = Pick<OperatingPoint, "volts" | "amps" | "quantity">;

/** The moments of a run by number of sample. Reading a waveform copies it: each is read once. */
export function momentsOf(run: Waveforms): (sample: number) => Moment {
  const known = new Map<string, Float64Array>();
  const read = (key: string, column: () => Float64Array): Float64Array => {
    const found = known.get(key) ?? column();
    known.set(key, found);
    return found;
  };
  return (sample) => ({
    volts: (node) => read(`volts ${node}`, () => run.volts(node))[sample],
    amps: (id) => read(`amps ${id}`, () => run.amps(id))[sample],
    quantity: (id, name) => read(`${name} of ${id}`, () => run.quantity(id, name))[sample],
  });
}

/** Joules in fields and rotors. */
export function storedJoules(element: CircuitElement, now: Moment): number {
  if (element.kind === "capacitor")
    return (element.farads * (now.volts(element.a) - now.volts(element.b)) ** 2) / 2;
  if (element.kind === "inductor") return (element.henries * now.amps(element.id) ** 2) / 2;
  if (element.kind === "motor") {
    const { id, ohms, henries = 1e-3 * ohms, inertia = 1e-4 } = element;
    return (henries * now.amps(id) ** 2 + inertia * now.quantity(id, "radiansPerSecond") ** 2) / 2;
  }
  return element.kind === "relay" ? ((element.henries ?? 0.4) * windingAmps(element, now) ** 2) / 2 : 0;
}

/**
 * Watts that become heat or leave by the shaft in a storing element; undefined for a relay with a suppressor, whose
 * current is not all the coil's.
 */
export function lostWatts(element: CircuitElement, now: Moment): number | undefined {
  if (element.kind === "motor") {
    const { id, ohms, celsius = 20, brushVolts = 0, viscousFriction = 0, loadPerSpeed = 0 } = element;
    const { coulombFriction = 0, loadTorque = 0, loadPerSpeedSquared = 0 } = element;
    const [amps, speed] = [now.amps(id), now.quantity(id, "radiansPerSecond")];
    const electric =
      ohms * windingOhmsFactor(celsius) * amps ** 2 + brushVolts * amps * Math.tanh(amps / 0.1);
    const dry = (coulombFriction + loadTorque) * Math.tanh(speed / 0.1);
    const torque = (viscousFriction + loadPerSpeed + loadPerSpeedSquared * Math.abs(speed)) * speed + dry;
    return electric + torque * speed;
  }
  if (element.kind !== "relay") return 0;
  const { ohms = 85, celsius = 20, coreOhms = 50 * ohms, suppressor = "none" } = element;
  if (suppressor !== "none") return undefined;
  const amps = now.quantity(element.id, "ampsCoil");
  const core = amps - windingAmps(element, now);
  return ohms * windingOhmsFactor(celsius) * amps ** 2 + coreOhms * core ** 2;
}

/** Amps of a relay's winding: those of its coil less what flows in the core beside it. */
function windingAmps(relay: Extract<CircuitElement, { kind: "relay" }>, now: Moment): number {
  const { ohms = 85, celsius = 20, coreOhms = 50 * ohms, coilPlus, coilMinus } = relay;
  const amps = now.quantity(relay.id, "ampsCoil");
  const induced = now.volts(coilPlus) - now.volts(coilMinus) - ohms * windingOhmsFactor(celsius) * amps;
  return amps - induced / coreOhms;
}

const points = [-0.906179845938664, -0.538469310105683, 0, 0.538469310105683, 0.906179845938664];
const weights = [
  0.236926885056189, 0.478628670499366, 0.568888888888889, 0.478628670499366, 0.236926885056189,
];

/** Gauss's rule of 5 points (Abramowitz 25.4.30) between neighbouring samples: where to look, and with what weight. */
export function gaussRule(seconds: Float64Array): { readonly times: number[]; readonly parts: number[] } {
  const times: number[] = [];
  const parts: number[] = [];
  for (let i = 1; i < seconds.length; i++) {
    const half = (seconds[i] - seconds[i - 1]) / 2;
    if (half === 0) continue;
    for (const [k, p] of points.entries()) {
      times.push(seconds[i - 1] + half * (1 + p));
      parts.push(weights[k] * half);
    }
  }
  return { times, parts };
}
