import type { LearnerView } from "@probeworthy/evaluation";
import { describe, expect, it } from "vitest";
import { standingAfter } from "./standing";

const line = (sequence: number): LearnerView["log"][number] => ({
  sequence,
  elapsedSeconds: sequence,
  command: { type: "open" },
  observation: { kind: "bench", message: "" },
});

describe("what still stands along a log", () => {
  const evidence = {
    candidates: ["a", "b", "c"].map((id) => ({ id, title: id })),
    steps: [{ line: 2, standing: ["a", "b"], ruledOut: ["c"] }],
    truth: "a",
    named: null,
    proven: false,
  };

  it("changes only with lines that were weighed", () => {
    const steps = standingAfter([line(1), line(2), line(3)], evidence);
    expect([...steps.values()]).toEqual([
      { standing: ["a", "b", "c"], ruledOut: [], weighed: false },
      { standing: ["a", "b"], ruledOut: ["c"], weighed: true },
      { standing: ["a", "b"], ruledOut: [], weighed: false },
    ]);
  });

  it("is unknown before the grade", () => {
    expect(standingAfter([line(1)], undefined).size).toBe(0);
  });
});
