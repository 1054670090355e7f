import { execFile } from "node:child_process";
import { promisify } from "node:util";
import { expect, it } from "vitest";

it("the example grades the log that lies beside it, without any web", async () => {
  const { stdout } = await promisify(execFile)("npx", ["tsx", "packages/evaluation/examples/replay-log.ts"]);
  expect(stdout).toContain("Heavy all at once: 20 lines");
  expect(stdout).toContain("Proven: the readings leave no other cause.");
  expect(stdout).toMatch(/Score \d+(\.\d)? of 100/);
  expect(stdout).toContain("It was: F2");
});
