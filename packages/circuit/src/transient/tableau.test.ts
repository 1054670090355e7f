import { describe, expect, it } from "vitest";
import { esdirk3 } from "./tableau";

const { nodes, weights, error, stages, diagonal } = esdirk3;
const last = weights[stages - 1];
const sum = (terms: readonly number[]) => terms.reduce((total, each) => total + each, 0);

/** Amplification of y' = λy over one step, z = hλ = x + iy; answers its size. */
function growth(x: number, y: number): number {
  type Complex = readonly [number, number];
  const times = ([a, b]: Complex, [c, d]: Complex): Complex => [a * c - b * d, a * d + b * c];
  const over = ([a, b]: Complex, [c, d]: Complex): Complex => {
    const size = c * c + d * d;
    return [(a * c + b * d) / size, (b * c - a * d) / size];
  };
  const z: Complex = [x, y];
  const values: Complex[] = [[1, 0]];
  for (let i = 1; i < stages; i++) {
    let right: Complex = [1, 0];
    for (let j = 0; j < i; j++) {
      const [re, im] = times(z, values[j]);
      right = [right[0] + weights[i][j] * re, right[1] + weights[i][j] * im];
    }
    values.push(over(right, [1 - diagonal * x, -diagonal * y]));
  }
  return Math.hypot(...values[stages - 1]);
}

describe("the method", () => {
  // Order conditions: E. Hairer, S. P. Nørsett, G. Wanner, Solving ODE I, II.2 (from memory).
  it("meets the conditions of third order, and every stage those of second", () => {
    expect(sum(last)).toBeCloseTo(1, 14);
    for (const [i, row] of weights.entries()) {
      expect(sum(row)).toBeCloseTo(nodes[i], 14);
      expect(sum(row.map((w, j) => w * nodes[j]))).toBeCloseTo(nodes[i] ** 2 / 2, 14);
    }
    expect(sum(last.map((w, j) => w * nodes[j] ** 2))).toBeCloseTo(1 / 3, 13);
    const inner = weights.map((row) => sum(row.map((w, j) => w * nodes[j])));
    expect(sum(last.map((w, j) => w * inner[j]))).toBeCloseTo(1 / 6, 13);
  });

  it("estimates nothing but what goes as the third power of the step", () => {
    expect(sum([...error])).toBeCloseTo(0, 14);
    expect(sum(error.map((d, j) => d * nodes[j]))).toBeCloseTo(0, 14);
    expect(sum(error.map((d, j) => d * nodes[j] ** 2)) / 2).toBeCloseTo(0.015, 14);
  });

  it("damps what is stiff and never makes a swing grow", () => {
    expect(growth(-1e9, 0)).toBeLessThan(1e-8);
    expect(growth(-1e3, 1e3)).toBeLessThan(1e-2);
    for (let decade = -2; decade <= 5; decade += 0.1)
      expect(growth(0, 10 ** decade)).toBeLessThanOrEqual(1 + 1e-12);
  });
});
