import { expect, it } from "vitest";
import { runCommand, stopChildren } from "./run-command.mjs";

const node = (/** @type {string} */ script) => runCommand(process.execPath, ["-e", script]);

it("answers exit code and both outputs", async () => {
  const result = await node("console.log('out'); console.error('err'); process.exitCode = 3");
  expect(result).toMatchObject({ code: 3, stdout: "out\n" });
  expect(result.output).toContain("out\n");
  expect(result.output).toContain("err\n");
});

it("answers 127 and a reason for a program that is not there", async () => {
  const result = await runCommand("no-such-program-anywhere", []);
  expect(result.code).toBe(127);
  expect(result.output).toContain("ENOENT");
});

it("stops a child that would run forever, and insists when it does not listen", async () => {
  const forever = node("setInterval(() => {}, 1000)");
  const deaf = node("process.on('SIGTERM', () => {}); setInterval(() => {}, 1000)");
  await stopChildren(200);
  expect((await forever).code).not.toBe(0);
  expect((await deaf).code).not.toBe(0);
});
