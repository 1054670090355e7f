import type { Command } from "@probeworthy/evaluation";
import { commandSchema } from "@probeworthy/evaluation";
import { checkLog, decide, evolve, replay } from "@probeworthy/evaluation/server";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  contextWith,
  lastReading,
  open,
  refusalOf,
  scenarioNamed,
  step,
  work,
} from "../../support/attempt-bench";

const scenario = scenarioNamed("something-with-the-steering");
const fuseOpen = contextWith(scenario, [{ kind: "fuseBlown", component: "F2" }]);

/** Any command a bench could send, sensible or not. */
const someCommand: fc.Arbitrary<Command> = fc.oneof(
  fc.record({
    type: fc.constant("setConditions" as const),
    values: fc.oneof(
      fc.record({ key: fc.constantFrom("off", "on", "start", "sideways") }),
      fc.record({ engineSpeed: fc.constantFrom(0, 850, 99999), key: fc.constant("on") }),
      fc.record({ steeringEffort: fc.constantFrom(-4, 0, 3) }),
      fc.constant({ noSuchThing: 1 }),
    ),
  }),
  fc.record({
    type: fc.constantFrom("unplug" as const, "plug" as const),
    connector: fc.constantFrom("X10", "X11", "X99"),
  }),
  fc.record({ type: fc.constant("pullFuse" as const), fuse: fc.constantFrom("F2", "F11", "F99") }),
  fc.record({
    type: fc.constant("fitFuse" as const),
    fuse: fc.constantFrom("F2", "F11"),
    fresh: fc.boolean(),
  }),
  fc.record({
    type: fc.constant("placeLead" as const),
    lead: fc.constantFrom("red" as const, "black" as const),
    point: fc.constantFrom("G1:+", "G1:-", "X10.1:h", "X10.1:c", "F2:1", "F2:2", "F2:1:p", "Q1:1"),
  }),
  fc.record({
    type: fc.constant("liftLead" as const),
    lead: fc.constantFrom("red" as const, "black" as const),
  }),
  fc.record({
    type: fc.constant("selectFunction" as const),
    function: fc.constantFrom("volts" as const, "ohms" as const, "amps" as const, "continuity" as const),
  }),
  fc.constant({ type: "takeReading" as const }),
  fc.constant({ type: "replaceMeterFuse" as const }),
  fc.record({
    type: fc.constantFrom("readCodes" as const, "readLiveData" as const, "clearCodes" as const),
    module: fc.constantFrom("A1", "A4", "A99"),
  }),
  fc.record({ type: fc.constant("wait" as const), seconds: fc.integer({ min: 1, max: 600 }) }),
);

describe("laws of an attempt", () => {
  it("a log replays to the state it came from; refusals change nothing; the same commands give the same bytes", () => {
    fc.assert(
      fc.property(fc.array(someCommand, { maxLength: 12 }), (commands) => {
        const run = () => {
          let { state, events } = open(fuseOpen);
          const log = [...events];
          for (const command of commands) {
            const before = JSON.stringify(state);
            const decision = decide(fuseOpen, state, command);
            expect(JSON.stringify(state)).toBe(before);
            if (!decision.ok) {
              expect(decision.error.message.length).toBeGreaterThan(10);
              continue;
            }
            for (const event of decision.value) {
              state = evolve(state, event);
              log.push(event);
            }
          }
          return { state, log };
        };
        const [first, second] = [run(), run()];
        expect(JSON.stringify(second.log)).toBe(JSON.stringify(first.log));
        expect(replay(first.log)).toEqual(first.state);
        // Through storage and back: the schema takes every line, and nothing is lost on the way.
        const stored = checkLog(JSON.parse(JSON.stringify(first.log)));
        expect(stored.ok && replay(stored.value)).toEqual(first.state);
      }),
      { numRuns: 12 },
    );
  });
});

describe("what the bench refuses, in words", () => {
  const fresh = open(fuseOpen);
  it.each<[string, Command, string]>([
    [
      "a point under a mated connector",
      { type: "placeLead", lead: "red", point: "X10.1:c" },
      "point_not_accessible",
    ],
    ["a point that is not there", { type: "placeLead", lead: "red", point: "Q1:1" }, "unknown_point"],
    ["a connector that is not there", { type: "unplug", connector: "X99" }, "unknown_connector"],
    ["plugging what is plugged", { type: "plug", connector: "X10" }, "already_so"],
    ["a fuse that is not there", { type: "pullFuse", fuse: "F99" }, "unknown_fuse"],
    ["fitting a fuse on top of one", { type: "fitFuse", fuse: "F2", fresh: true }, "already_so"],
    ["a module that is not there", { type: "readCodes", module: "A99" }, "unknown_module"],
    ["a condition that is not there", step.set({ sunroof: "open" }), "unknown_condition"],
    ["a position the key does not have", step.set({ key: "sideways" }), "invalid_condition"],
    ["an engine beyond its speed", step.set({ key: "on", engineSpeed: 99999 }), "invalid_condition"],
    ["an engine that runs with the key off", step.set({ engineSpeed: 850 }), "invalid_condition"],
    ["changing the weather", step.set({ ambientTemperature: 30 }), "invalid_condition"],
    ["setting what is set", step.set({ key: "off" }), "already_so"],
    ["reading without leads", { type: "takeReading" }, "leads_not_placed"],
    ["lifting a lead that is not placed", { type: "liftLead", lead: "red" }, "already_so"],
    ["a new meter fuse for a good one", { type: "replaceMeterFuse" }, "already_so"],
    ["a report on a place that is not there", step.submit({ place: "W999" }), "unknown_place"],
    ["a report on no place", step.submit({ place: "" }), "unknown_place"],
  ])("%s", (_, command, code) => {
    expect(refusalOf(fresh, command)?.code).toBe(code);
  });

  it("says why the engine does not run", () => {
    expect(refusalOf(fresh, step.set({ engineSpeed: 850 }))?.message).toBe(
      "Engine speed cannot be set now. Only with Key position at On.",
    );
  });

  it("an instrument that is not part of the job", () => {
    const job = open({ ...fuseOpen, scenario: { ...scenario, instruments: ["volts"] } });
    expect(refusalOf(job, { type: "selectFunction", function: "ohms" })?.code).toBe("instrument_not_allowed");
    expect(refusalOf(job, step.codes("A1"))?.code).toBe("instrument_not_allowed");
    const scanOnly = open({ ...fuseOpen, scenario: { ...scenario, instruments: ["codes"] } });
    expect(refusalOf(scanOnly, { type: "takeReading" })?.code).toBe("instrument_not_allowed");
  });

  it("a reading without a prediction where one is asked for", () => {
    const job = work(
      open({ ...fuseOpen, scenario: { ...scenario, requirePrediction: true } }),
      { type: "placeLead", lead: "red", point: "G1:+" },
      { type: "placeLead", lead: "black", point: "G1:-" },
    );
    expect(refusalOf(job, { type: "takeReading" })?.code).toBe("prediction_required");
    const done = work(job, { type: "takeReading", prediction: { kind: "figure", value: 12.6 } });
    expect(done.events.at(-1)?.observation).toMatchObject({ prediction: { kind: "figure", value: 12.6 } });
  });

  it("more actions or time than there are, but never the report", () => {
    const few = open({ ...fuseOpen, scenario: { ...scenario, limits: { actions: 1, shopMinutes: 90 } } });
    const used = work(few, step.set({ key: "on" }));
    expect(refusalOf(used, step.set({ key: "off" }))?.code).toBe("limit_reached");
    expect(refusalOf(used, step.submit({ place: "F2" }))).toBeNull();
    const short = open({ ...fuseOpen, scenario: { ...scenario, limits: { actions: 9, shopMinutes: 1 } } });
    expect(refusalOf(short, { type: "wait", seconds: 61 })?.code).toBe("limit_reached");
  });

  it("anything after the report", () => {
    const done = work(fresh, step.submit({ kind: "fuseOpen", place: "F2" }, { action: "replaceFuse" }));
    expect(refusalOf(done, step.set({ key: "on" }))?.code).toBe("attempt_closed");
    expect(refusalOf(done, step.submit({ place: "F2" }))?.code).toBe("attempt_closed");
  });
});

describe("the bench", () => {
  it("shows supply before a melted fuse and none behind it, and the melted element in the hand", () => {
    const before = work(open(fuseOpen), ...step.read("F2:1", "G1:-"));
    expect(Number.parseFloat(lastReading(before))).toBeGreaterThan(12);
    const behind = work(before, ...step.redTo("F2:2"));
    expect(Number.parseFloat(lastReading(behind))).toBeLessThan(0.1);
    const pulled = work(behind, { type: "pullFuse", fuse: "F2" });
    expect(pulled.events.at(-1)?.observation).toMatchObject({
      kind: "fuse",
      element: "melted",
      holder: "empty",
    });
    const measured = work(
      pulled,
      { type: "selectFunction", function: "ohms" },
      ...step.read("F2:1:p", "F2:2:p"),
    );
    expect(lastReading(measured)).toBe("OL MΩ");
  });

  it("drops a lead whose point is gone, and says so", () => {
    const probing = work(
      open(fuseOpen),
      { type: "unplug", connector: "X10" },
      { type: "placeLead", lead: "red", point: "X10.1:c" },
      { type: "plug", connector: "X10" },
    );
    expect(probing.state.leads.red).toBeNull();
    expect(probing.events.at(-1)?.observation).toMatchObject({ lifted: ["red"] });
  });

  it("stops the engine with the key", () => {
    const stopped = work(open(fuseOpen), step.set({ key: "on", engineSpeed: 850 }), step.set({ key: "off" }));
    expect(stopped.state.conditions).toMatchObject({ key: "off", engineSpeed: 0 });
  });

  it("loses the meter's fuse across the battery, reads zero until it has a new one, and remembers", () => {
    const across = work(
      open(fuseOpen),
      { type: "selectFunction", function: "amps" },
      ...step.read("G1:+", "G1:-"),
    );
    expect(across.events.at(-1)?.world).toMatchObject({
      meterFuse: "open",
      remarks: ["amps_across_supply", "meter_fuse_blown"],
    });
    const again = work(across, { type: "takeReading" });
    expect(lastReading(again)).toBe("0.00 A");
    expect(again.events.at(-1)?.world.remarks).toEqual([]);
    expect(work(again, { type: "replaceMeterFuse" }).state.world.meterFuse).toBe("good");
  });

  it("remembers ohms on a live circuit", () => {
    const live = work(
      open(fuseOpen),
      { type: "selectFunction", function: "ohms" },
      ...step.read("G1:+", "G1:-"),
    );
    expect(live.events.at(-1)?.world.remarks).toEqual(["ohms_on_live_circuit"]);
  });

  it("remembers a module unplugged with the key on, whether or not the fault had put it to sleep", () => {
    const asleep = contextWith(scenario, [{ kind: "fuseBlown", component: "F11" }]);
    for (const context of [fuseOpen, asleep]) {
      const pulled = work(open(context), step.set({ key: "on" }), { type: "unplug", connector: "X11" });
      expect(pulled.events.at(-1)?.world.remarks).toContain("unplugged_live");
      const dead = work(open(context), { type: "unplug", connector: "X11" });
      expect(dead.events.at(-1)?.world.remarks).toEqual([]);
    }
  });

  it("takes shop time for everything", () => {
    const worked = work(
      open(fuseOpen),
      step.set({ key: "on" }),
      ...step.read("G1:+", "G1:-"),
      step.codes("A1"),
    );
    expect(worked.state.elapsedSeconds).toBe(10 + 10 + 10 + 20 + 60);
    expect(worked.state.actions).toBe(5);
  });

  it("melts a fresh fuse on a short behind it", () => {
    const short = contextWith(scenario, [{ kind: "shortToGround", at: "X11.2:h", ohms: 0.05 }]);
    const fitted = work(
      open(short),
      step.set({ key: "on" }),
      { type: "pullFuse", fuse: "F11" },
      { type: "fitFuse", fuse: "F11", fresh: true },
    );
    expect(fitted.events.at(-1)?.observation).toMatchObject({ kind: "fuse", element: "melted" });
    expect(fitted.events.at(-1)?.world.remarks).toContain("fuse_blew");
  });

  it("takes only commands of the schema", () => {
    expect(commandSchema.safeParse({ type: "peek", fault: true }).success).toBe(false);
    expect(commandSchema.safeParse({ type: "takeReading", secret: 1 }).success).toBe(false);
  });
});
