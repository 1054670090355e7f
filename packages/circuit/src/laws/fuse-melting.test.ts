import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { fuseParameters } from "../elements/fuse";
import type { Fuse } from "../network";
import { type FuseType, fuseOpeningSeconds } from "../physics/fuse-curve";
import { fuseLink, linkAmps } from "./fuse-link";
import { fuseMelting } from "./fuse-melting";
import { evaluateLaw, run, settle, worstSlope } from "./one-port-bench";

const types = ["C", "E", "F", "bolted"] as const satisfies readonly FuseType[];
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const anyFuse = fc
  .record({
    type: fc.constantFrom(...types),
    ratedAmps: between(1, 120),
    ambientCelsius: between(-40, 125),
    melted: between(0, 0.5),
  })
  .map((fields): Fuse => ({ kind: "fuse", id: "f", a: "a", b: "0", ...fields }));

describe("a fuse link", () => {
  it("is cold at no current and drops what is printed at its rating", () => {
    fc.assert(
      fc.property(anyFuse, between(1, 2.4), (element, ratio) => {
        const coldOhms = 3e-3;
        const ratedDropVolts = ratio * coldOhms * element.ratedAmps;
        const parameters = fuseParameters({ ...element, coldOhms, ratedDropVolts }, false);
        expect(evaluateLaw(fuseLink, parameters, Float64Array.of(0)).df[0]).toBeCloseTo(1 / coldOhms, 9);
        expect(linkAmps(parameters, ratedDropVolts) / element.ratedAmps).toBeCloseTo(1, 9);
      }),
    );
  });

  it("passes more current the more volts, takes power, and is finite far outside", () => {
    fc.assert(
      fc.property(anyFuse, between(-1e6, 1e6), fc.boolean(), (element, v, isBlown) => {
        const parameters = fuseParameters(element, isBlown);
        const out = evaluateLaw(fuseMelting, parameters, Float64Array.of(v, 0.3));
        for (const values of [out.f, out.q, out.df, out.dq]) expect(values.every(Number.isFinite)).toBe(true);
        expect(out.df[0]).toBeGreaterThan(0);
        expect(v * (out.f[0] ?? Number.NaN)).toBeGreaterThanOrEqual(0);
        expect(linkAmps(parameters, -v)).toBe(-linkAmps(parameters, v));
      }),
    );
  });

  it("states the derivatives of its equations", () => {
    fc.assert(
      fc.property(anyFuse, between(-4, 4), between(0, 1), fc.boolean(), (element, times, melted, isBlown) => {
        const parameters = fuseParameters(element, isBlown);
        const v = times * element.ratedAmps * parameters.coldOhms;
        for (const isStatic of [false, true]) {
          const x = Float64Array.of(v, melted);
          expect(worstSlope(fuseMelting, parameters, x, [1e-7, 1e-6], isStatic)).toBeLessThan(1e-4);
        }
      }),
    );
  });

  it("melts through at a constant current in the time of its curve", () => {
    for (const type of types) {
      for (const ratedAmps of [5, 20, 60]) {
        for (const times of [1.2, 1.35, 2, 3.5, 6, 15]) {
          const parameters = fuseParameters(
            { kind: "fuse", id: "f", a: "a", b: "0", type, ratedAmps },
            false,
          );
          const amps = times * ratedAmps;
          const wanted = fuseOpeningSeconds(type, ratedAmps, amps);
          // A source so high that it forces the current.
          const drive = { volts: amps * 1e6, ohms: 1e6 };
          const rows = run(fuseMelting, parameters, drive, wanted / 200, (x) => (x[1] ?? 0) >= 1);
          const [before, after] = rows.slice(-2);
          if (!before || !after) throw new Error("opened at once");
          const [low, high] = [before.x[1] ?? Number.NaN, after.x[1] ?? Number.NaN];
          const opens = before.time + ((1 - low) / (high - low)) * (after.time - before.time);
          expect(opens / wanted).toBeCloseTo(1, 5);
        }
      }
    }
  });

  it("adds up shares of different currents and recovers between them", () => {
    const parameters = fuseParameters(
      { kind: "fuse", id: "f", a: "a", b: "0", type: "C", ratedAmps: 10 },
      false,
    );
    const share = (amps: number, seconds: number, start: Float64Array) => {
      const drive = { volts: amps * 1e6, ohms: 1e6 };
      return run(fuseMelting, parameters, drive, seconds / 500, (_x, time) => time >= seconds - 1e-9, start);
    };
    const hot = share(20, 0.6, Float64Array.of(0, 0)).at(-1)?.x ?? Float64Array.of(0, 0);
    expect(hot[1]).toBeCloseTo(0.6 / fuseOpeningSeconds("C", 10, 20), 6);
    const both = share(13.5, 12, hot).at(-1)?.x;
    expect(both?.[1]).toBeCloseTo(0.6 + 12 / fuseOpeningSeconds("C", 10, 13.5), 3);
    // Twenty seconds at no more than its rating leave 1/e.
    expect(share(5, 20, hot).at(-1)?.x[1]).toBeCloseTo(0.6 / Math.E, 3);
  });

  it("holds its melted share where there is no time, and is open once blown", () => {
    const element: Fuse = { kind: "fuse", id: "f", a: "a", b: "0", type: "F", ratedAmps: 10, melted: 0.25 };
    expect(settle(fuseMelting, fuseParameters(element, false), { volts: 12, ohms: 0.1 })?.[1]).toBe(0.25);
    const blown = settle(fuseMelting, fuseParameters(element, true), { volts: 12, ohms: 0.1 });
    expect(blown?.[0]).toBeCloseTo(12, 9);
  });
});
