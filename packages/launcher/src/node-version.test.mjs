import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { compareVersions, nodeVersionProblem, oldestNode } from "./node-version.mjs";
import { root } from "./paths.mjs";

describe("node version", () => {
  it.each([
    ["20.19.0", "20.19.0", 0],
    ["20.9.0", "20.19.0", -1],
    ["22.0.0", "20.19.0", 1],
    ["20.19.1", "20.19.0", 1],
    ["24.0.0-nightly", "24.0.0", 0],
  ])("%s against %s", (a, b, sign) => {
    expect(Math.sign(compareVersions(a, b))).toBe(sign);
    expect(Math.sign(compareVersions(b, a))).toBe(0 - sign);
  });

  it("says what is wrong and what would be right", () => {
    expect(nodeVersionProblem("18.20.4")).toContain("needs Node 20.19.0 or newer, and this is Node 18.20.4");
    expect(nodeVersionProblem("20.19.0")).toBeNull();
  });

  it("is the one package.json tells npm", () => {
    const { engines } = JSON.parse(readFileSync(join(root, "package.json"), "utf8"));
    expect(`${engines.node.replace(">=", "")}.0`).toBe(oldestNode);
  });
});
