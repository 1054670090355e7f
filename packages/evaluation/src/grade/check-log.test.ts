import { describe, expect, it } from "vitest";
import { evolve, replay } from "../attempt-state";
import type { AttemptEvent } from "../event";
import { checkLog } from "./check-log";

const world = {
  slow: { seconds: 0, motors: {}, charge: {}, blownFuses: [], modules: {} },
  meterFuse: "good" as const,
  remarks: [],
};
const context = { conditions: { key: "off" }, unplugged: [], pulledFuses: [] };
const opened: AttemptEvent = {
  sequence: 1,
  command: { type: "open" },
  observation: { kind: "noticed", context, items: [] },
  elapsedSeconds: 0,
  world,
};
const line = (
  sequence: number,
  elapsedSeconds = sequence,
  command: AttemptEvent["command"] = { type: "placeLead", lead: "red", point: "G1:+" },
): AttemptEvent => ({
  sequence,
  command,
  observation: { kind: "bench", message: "" },
  elapsedSeconds,
  world,
});
const lineOfDamage = (events: readonly unknown[]) => {
  const checked = checkLog(events);
  return checked.ok ? null : checked.error.line;
};

describe("a log", () => {
  it("that is whole is taken", () => {
    expect(lineOfDamage([opened, line(2), line(3)])).toBeNull();
  });
  it.each([
    ["is empty", [], 1],
    ["lacks its beginning", [line(1)], 1],
    ["has a gap", [opened, line(2), line(4)], 3],
    ["is out of order", [opened, line(3), line(2)], 2],
    ["opens twice", [opened, { ...opened, sequence: 2 }], 2],
    ["runs back in time", [opened, line(2, 50), line(3, 40)], 3],
    ["has a line that is not one", [opened, { sequence: 2 }], 2],
    [
      "has a line of an unknown kind",
      [opened, { ...line(2), observation: { kind: "peek", fault: "W1" } }],
      2,
    ],
  ])("that %s is refused with its line", (_, events, damaged) => {
    expect(lineOfDamage(events)).toBe(damaged);
  });
});

describe("evolve", () => {
  it("refuses a line out of order", () => {
    expect(() => evolve(replay([opened]), line(3))).toThrow("line 3 follows line 1");
  });

  it("moves leads, and drops those whose point is gone", () => {
    const placed = replay([opened, line(2)]);
    expect(placed.leads.red).toBe("G1:+");
    const gone = evolve(placed, {
      ...line(3, 3, { type: "plug", connector: "X1" }),
      observation: { kind: "noticed", context, items: [], lifted: ["red"] },
    });
    expect(gone.leads.red).toBeNull();
  });
});
