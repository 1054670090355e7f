import { describe, expect, it } from "vitest";
import type { Fault } from "../document/fault";
import { Drive } from "../testing/drive";
import { lead, module, moduleRig, numberCondition } from "../testing/module-rig";

/** A master that sends a command to two slaves, one of which answers and is heard by the other. */
const rig = (faults: readonly Fault[] = [], conditions: Record<string, number> = {}): Drive =>
  new Drive(
    faults,
    conditions,
    moduleRig({
      modules: [
        module("A1", ["LIN"], {
          lin: {
            terminal: "LIN",
            role: "master",
            dominantShare: 0.2,
            sends: [{ message: "command", value: { condition: "command" } }],
            receives: [{ message: "position", from: "A2", substitute: -1 }],
          },
          signals: [
            { name: "position", value: { message: "position" } },
            { name: "heard", value: { heard: "position" } },
          ],
        }),
        module("A2", ["LIN"], {
          lin: {
            terminal: "LIN",
            role: "slave",
            dominantShare: 0.1,
            sends: [{ message: "position", value: { op: "multiply", args: ["command", 2] } }],
            receives: [{ message: "command", from: "A1", substitute: 0 }],
          },
          signals: [{ name: "command", value: { message: "command" } }],
        }),
        module("A3", ["LIN"], {
          lin: {
            terminal: "LIN",
            role: "slave",
            dominantShare: 0,
            sends: [],
            receives: [{ message: "position", from: "A2", substitute: -1 }],
          },
          signals: [{ name: "position", value: { message: "position" } }],
        }),
      ],
      conductors: [lead("W11", "A1:LIN", "XS2"), lead("W12", "XS2", "A2:LIN"), lead("W13", "XS2", "A3:LIN")],
      conditions: [numberCondition("command", 21)],
    }),
  );

describe("a one-wire bus", () => {
  it("carries messages both ways, and from slave to slave", () => {
    const now = rig();
    expect(now.signal("command", "A2")).toBe(21);
    expect(now.signal("position", "A1")).toBe(42);
    expect(now.signal("position", "A3")).toBe(42);
  });

  it("stands a little below the supply while nobody talks, lower on the mean while somebody does", () => {
    const quiet = rig([
      { kind: "silentNode", component: "A1" },
      { kind: "silentNode", component: "A2" },
    ]);
    const resting = quiet.volts("A1:LIN", "A1:31");
    expect(resting).toBeGreaterThan(0.9 * quiet.volts("A1:30", "A1:31"));
    const mean = rig().volts("A1:LIN", "A1:31");
    expect(mean).toBeGreaterThan(0.6 * resting);
    expect(mean).toBeLessThan(0.8 * resting);
  });

  it("falls silent with a silent master, and substitutes are used", () => {
    const now = rig([{ kind: "silentNode", component: "A1" }]);
    expect(now.signal("heard", "A1")).toBe(0);
    expect(now.signal("command", "A2")).toBe(0);
    expect(now.signal("position", "A1")).toBe(-1);
    // Without a header no slave answers.
    expect(now.signal("position", "A3")).toBe(-1);
  });

  it("stops when the wire is shorted to ground, and goes on without one slave", () => {
    const shorted = rig([{ kind: "shortToGround", at: "A1:LIN", ohms: 0.1 }]);
    expect(shorted.signal("heard", "A1")).toBe(0);
    const cut = rig([{ kind: "open", at: "W13" }]);
    expect(cut.signal("position", "A1")).toBe(42);
    expect(cut.signal("position", "A3")).toBe(-1);
  });

  it("loses a slave that resistance in its ground keeps from pulling the wire down", () => {
    const lifted = rig([{ kind: "seriesResistance", at: "WA231", ohms: 200_000 }]);
    expect(lifted.signal("heard", "A1")).toBe(0);
  });
});
