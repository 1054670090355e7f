import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { draw, representatives } from "./drawn-number";
import { hashText, stream, unit, weightedIndex } from "./random";

describe("the promise: same seed, same draw, for as long as this engine version lives", () => {
  it.each([
    ["", -1421968373],
    ["a", -1846945241],
    ["b", 135196497],
    ["é", -1589085513],
  ])("hash of %j", (text, hash) => expect(hashText(text)).toBe(hash));

  it("first numbers of three streams of seed a", () => {
    expect(["p1", "p2", "p3"].map((purpose) => unit(stream("a", purpose)))).toEqual([
      0.4248854476795779, 0.7668525582046131, 0.8517797410960785,
    ]);
  });

  it("severities", () => {
    expect(draw({ from: 0.01, to: 100, spread: "log" }, stream("a", "x"))).toBe(13.1);
    expect(draw({ from: 0, to: 10, spread: "linear" }, stream("a", "x"))).toBe(7.79);
  });
});

describe("laws", () => {
  it("a drawn number lies in its range and has three significant digits", () => {
    fc.assert(
      fc.property(fc.string(), fc.constantFrom("linear" as const, "log" as const), (seed, spread) => {
        const value = draw({ from: 0.02, to: 50, spread }, stream(seed, "ohms"));
        expect(value).toBeGreaterThanOrEqual(0.02);
        expect(value).toBeLessThanOrEqual(50);
        expect(Number(value.toPrecision(3))).toBe(value);
      }),
    );
  });

  it("a log range fills its decades evenly", () => {
    const values = Array.from({ length: 2000 }, (_, index) =>
      draw({ from: 0.1, to: 1000, spread: "log" }, stream(`seed ${index}`, "ohms")),
    );
    for (const [low, high] of [
      [0.1, 1],
      [1, 10],
      [10, 100],
      [100, 1000],
    ] as const) {
      const inDecade = values.filter((value) => value >= low && value < high).length;
      // 500 expected, standard deviation 19: five of them.
      expect(Math.abs(inDecade - 500)).toBeLessThan(97);
    }
  });

  it("weights are kept, also by seeds that differ in one digit only", () => {
    const counts = [0, 0];
    for (let index = 0; index < 4000; index++) {
      const drawn = weightedIndex(stream(`class-1/learner-${index}`, "candidate"), [3, 1]);
      counts[drawn] = (counts[drawn] ?? 0) + 1;
    }
    // 3000 expected, standard deviation 27: five of them.
    expect(Math.abs((counts[0] ?? 0) - 3000)).toBeLessThan(137);
  });

  it("representatives are the ends and the middle of a range", () => {
    expect(representatives({ from: 0.1, to: 10, spread: "log" })).toEqual([0.1, 1, 10]);
    expect(representatives({ from: 0, to: 10, spread: "linear" })).toEqual([0, 5, 10]);
    expect(representatives(3)).toEqual([3]);
  });
});
