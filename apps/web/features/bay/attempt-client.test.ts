import type { LearnerView } from "@probeworthy/evaluation";
import { expect, test } from "vitest";
import { isRecorded } from "./attempt-client";

const log = [
  {
    sequence: 2,
    elapsedSeconds: 10,
    command: { type: "setConditions", values: { key: "on", engineSpeed: 0 } },
    observation: { kind: "bench", message: "" },
  },
] as const satisfies LearnerView["log"];

test("the same command at the next line is ours, whatever the order of its keys", () => {
  const again = { type: "setConditions", values: { engineSpeed: 0, key: "on" } } as const;
  expect(isRecorded({ log: [...log] }, 1, again)).toBe(true);
});

test("another command there, or the same one elsewhere, is not", () => {
  expect(isRecorded({ log: [...log] }, 1, { type: "takeReading" })).toBe(false);
  expect(isRecorded({ log: [...log] }, 2, log[0].command)).toBe(false);
});
