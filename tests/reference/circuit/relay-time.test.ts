import { type CircuitElement, type Relay, transient } from "@probeworthy/circuit";
import { describe, expect, it } from "vitest";

const [ohms, henries, pullIn, dropOut] = [80, 0.4, 6.8, 2.4] as const;

const relay = (numbers: Partial<Relay> = {}): Relay => ({
  kind: "relay",
  id: "k",
  coilPlus: "86",
  coilMinus: "0",
  common: "30",
  normallyOpen: "87",
  normallyClosed: "87a",
  ohms,
  henries,
  pullInVolts: pullIn,
  dropOutVolts: dropOut,
  coreOhms: 1e9,
  ...numbers,
});
const rest: CircuitElement[] = [
  { kind: "voltageSource", id: "v", positive: "30", negative: "0", volts: 12 },
  { kind: "resistor", id: "on", a: "87", b: "0", ohms: 5 },
  { kind: "resistor", id: "off", a: "87a", b: "0", ohms: 5 },
];

/** The coil's feed closes and opens again at these times. */
function switched(numbers: Partial<Relay>, times: readonly number[], untilSeconds: number) {
  const result = transient(
    {
      ground: "0",
      elements: [
        ...rest,
        { kind: "switch", id: "s", a: "30", b: "86", closed: false, closedOhms: 1e-6, openOhms: 1e9 },
        relay(numbers),
      ],
    },
    {
      untilSeconds,
      relativeTolerance: 1e-6,
      ampTolerance: 1e-9,
      drives: [
        {
          element: "s",
          field: "closed",
          wave: { kind: "steps", times, values: times.map((_, k) => k % 2 === 0) },
        },
      ],
      record: { volts: ["86", "87", "87a"], amps: ["k"] },
    },
  );
  if (!result.ok) throw new Error(result.error.message);
  return result.value;
}

const pulled = 0.05;
const opened = 0.15;
const cycle = (numbers: Partial<Relay>) => {
  const run = switched(numbers, [pulled, opened], 0.3);
  expect(run.events.map(({ state }) => state)).toEqual([1, 0]);
  const [operate, release] = run.events.map(({ seconds }) => seconds);
  return { run, operate: (operate ?? 0) - pulled, release: (release ?? 0) - opened };
};
/** Time for the coil's current to fall from full to drop-out with a time constant. */
const releaseSeconds = (constant: number) => constant * Math.log(12 / dropOut);

describe("closed forms of the coil", () => {
  it("pulls in after −L/R · ln(1 − pull-in/supply)", () => {
    const expected = (-henries / ohms) * Math.log(1 - pullIn / 12);
    expect(cycle({ suppressor: "resistor" }).operate / expected).toBeCloseTo(1, 4);
  });

  it.each([220, 680, 1500])(
    "lets go with L/(R + %d Ω), and kicks by that resistance times its current",
    (Rs) => {
      const { run, release } = cycle({ suppressor: "resistor", suppressorOhms: Rs });
      expect(release / releaseSeconds(henries / (ohms + Rs))).toBeCloseTo(1, 4);
      expect(Math.min(...run.volts("86")) / ((-12 / ohms) * Rs)).toBeCloseTo(1, 4);
    },
  );

  it("adds L/core for eddy currents in the core", () => {
    const { release } = cycle({ suppressor: "resistor", coreOhms: 2000 });
    // The winding's current turns into the core and the suppressor at once; then both decay together.
    const parallel = 1 / (1 / (ohms + 680) + 1 / 2000);
    expect(release / releaseSeconds(henries / parallel)).toBeCloseTo(1, 4);
  });

  it("lets go slowly with a diode: L/R · ln of the currents, each with the diode's drop over R", () => {
    const { run, release } = cycle({ suppressor: "diode" });
    // A constant drop of 0.5 to 0.6 V over those currents stands for the junction.
    const slow = (drop: number) =>
      (henries / ohms) * Math.log((12 / ohms + drop / ohms) / (dropOut / ohms + drop / ohms));
    expect(release).toBeLessThan(slow(0.5));
    expect(release).toBeGreaterThan(slow(0.6));
    expect(Math.min(...run.volts("86"))).toBeGreaterThan(-0.7);
  });

  it("releases the sooner the less it is suppressed, and kicks the harder", () => {
    const [bare, resistor, diode] = (["none", "resistor", "diode"] as const).map((suppressor) =>
      cycle({ suppressor, coreOhms: 4000 }),
    );
    expect(bare!.release).toBeLessThan(resistor!.release);
    expect(resistor!.release).toBeLessThan(diode!.release);
    const kick = (of: typeof bare) => -Math.min(...of!.run.volts("86"));
    expect(kick(bare)).toBeGreaterThan(kick(resistor));
    expect(kick(resistor)).toBeGreaterThan(kick(diode));
    // Common practice, no source: some hundred volts from a bare coil of 12 V; here 4000 Ω times 0.15 A.
    expect(kick(bare)).toBeCloseTo(600, -1);
  });

  // OEN 78 operates in 10 ms and releases in 5 ms at most, OEN 79 in 10 and 7 ms (dtsheet.com 683071, 683074).
  it("keeps within published operate and release times at its default values", () => {
    const { operate, release } = cycle({ suppressor: "resistor", coreOhms: 50 * ohms });
    expect(operate).toBeLessThan(0.01);
    expect(release).toBeLessThan(0.005);
  });
});

describe("an armature that takes time", () => {
  const slow = {
    suppressor: "resistor",
    operateTravelSeconds: 2e-3,
    releaseTravelSeconds: 1e-3,
    bounceSeconds: [4e-4, 7e-4],
  } as const;

  it("touches after its flight, bounces at the stated times and opens the other contact first", () => {
    const run = switched(slow, [pulled, opened], 0.3);
    const gaps = run.events.map(({ seconds }, k) => seconds - (run.events[k - 1]?.seconds ?? 0)).slice(1);
    const expected = [2e-3, 4e-4, 3e-4, undefined, 1e-3, 4e-4, 3e-4];
    expect(gaps).toHaveLength(expected.length);
    for (const [k, seconds] of expected.entries()) {
      if (seconds !== undefined) expect(gaps[k]).toBeCloseTo(seconds, 7);
    }
    const start = (run.events[0]?.seconds ?? 0) + 1e-3;
    const flying = run.samplesAt([start]);
    for (const contact of ["87", "87a"]) expect(Math.abs(flying.volts(contact)[0]!)).toBeLessThan(0.1);
  });

  it("turns round when the feed goes before it arrives", () => {
    const brief = switched({ ...slow, bounceSeconds: [] }, [pulled, pulled + 5e-3], 0.2);
    expect(brief.volts("87").every((volts) => volts < 0.1)).toBe(true);
    expect(brief.events.at(-1)).toMatchObject({ state: 0 });
  });
});

describe("a buzzer: the coil through its own break contact", () => {
  it("keeps swinging, with pull-in and release by turns", () => {
    const result = transient(
      { ground: "0", elements: [...rest, relay({ coilPlus: "87a", suppressor: "resistor" })] },
      { start: "rest", untilSeconds: 0.1 },
    );
    if (!result.ok) throw new Error(result.error.message);
    const states = result.value.events.map(({ state }) => state);
    expect(states.length).toBeGreaterThan(10);
    for (const [k, state] of states.entries()) expect(state).toBe(1 - (k % 2));
    // From drop-out up to pull-in through the contact, and down again through the suppressor.
    const times = result.value.events.map(({ seconds }) => seconds);
    const up = (henries / ohms) * Math.log((12 - dropOut) / (12 - pullIn));
    const down = (henries / (ohms + 680 * (5 / (680 + 5)))) * Math.log(pullIn / dropOut);
    expect(times[2]! - times[1]!).toBeCloseTo(up, 4);
    expect(times[3]! - times[2]!).toBeCloseTo(down, 4);
  });
});
