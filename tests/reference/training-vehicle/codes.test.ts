import { describe, expect, it } from "vitest";
import { suppliedFaults } from "./supplied-faults";
import { cranking, idling, keyOn, TestDrive, turning } from "./test-drive";

type Codes = readonly string[] | undefined;

interface ExpectedCodes {
  readonly causes: readonly string[];
  /** Codes of the steering A1, engine A2, brake A3 and cluster A4 module; `undefined`: no answer at the socket. */
  readonly codes: readonly [Codes, Codes, Codes, Codes];
  readonly because: string;
}

const silent = undefined;

const table: readonly ExpectedCodes[] = [
  {
    causes: ["battery-feed-fuse-blown", "battery-feed-contact-open"],
    codes: [["C1421-16"], [], [], []],
    because: "awake on its ignition feed, the steering sees 0 V at its battery feed",
  },
  {
    causes: [
      "ignition-feed-fuse-blown",
      "ignition-feed-short",
      "ignition-feed-short-dash",
      "ignition-feed-short-column",
    ],
    codes: [silent, [], [], ["U0131-87"]],
    because: "a module without supply has no codes; the only one that listens for it misses it",
  },
  {
    causes: ["power-ground-ring", "power-ground-contact", "motor-contact-resistance"],
    codes: [["C1411-18"], [], [], []],
    because: "at full duty less current flows than was asked for",
  },
  {
    causes: ["weak-battery", "body-ground-strap"],
    codes: [["C1421-16", "C1422-16"], [], [], []],
    because: "both feeds of the steering sagged while cranking, and both codes stay in the memory",
  },
  {
    causes: ["ignition-feed-contact-corroded"],
    codes: [["C1422-16"], [], [], []],
    because: "only the ignition feed loses volts",
  },
  {
    causes: ["signal-ground-contact-corroded"],
    codes: [["C1421-16", "C1422-16"], [], [], []],
    because: "with its ground lifted the module sees both feeds too low, the battery feed while cranking",
  },
  {
    causes: ["sensor-ground-wire-open", "sensor-ground-pin-module", "sensor-ground-pin-sensor"],
    codes: [["C1401-12", "C1402-12"], [], [], []],
    because: "without ground both signals float up to the supply",
  },
  {
    causes: ["sensor-supply-short-to-ground", "sensor-supply-short-to-sensor-ground"],
    codes: [["C1404-16"], [], [], []],
    because: "the supply itself is low, so the signals are not judged",
  },
  {
    causes: ["signal-1-wire-open", "signal-1-pin-sensor"],
    codes: [["C1401-14"], [], [], []],
    because: "the open input is pulled down; a short to ground would look the same",
  },
  {
    causes: ["signal-2-wire-open", "signal-2-open-inside"],
    codes: [["C1402-14"], [], [], []],
    because: "the open input is pulled down",
  },
  {
    causes: ["signal-1-high", "signal-2-high", "signal-1-low", "motor-hot", "works-as-designed"],
    codes: [[], [], [], []],
    because: "too small an error for the mirror check, or no error at all",
  },
  {
    causes: ["signal-1-to-sensor-supply", "signal-1-to-ignition-feed"],
    codes: [["C1401-12"], [], [], []],
    because: "signal 1 above its window",
  },
  {
    causes: ["motor-winding-open", "motor-contact-open", "power-ground-open"],
    codes: [["C1411-13"], [], [], []],
    because: "no current flows although voltage is there; the module cannot tell the three apart",
  },
  {
    causes: ["can-high-brake-wire-open", "can-low-brake-wire-open", "can-high-brake-contact-open"],
    codes: [["U0129-87"], ["U0129-87"], silent, []],
    because: "whoever uses the road speed for a function misses the brake module",
  },
  {
    causes: ["can-high-steering-wire-open", "can-low-steering-wire-open", "can-low-steering-contact-open"],
    codes: [silent, [], [], ["U0131-87"]],
    because: "the steering is not heard, neither by the cluster nor by a scan tool",
  },
  {
    causes: ["can-high-to-ground-column", "can-high-to-ground-bulkhead"],
    codes: [silent, silent, silent, silent],
    because: "nobody gets a message through, so the scan tool reaches nobody",
  },
];

describe("the codes of every supplied fault after a start and a tight turn", () => {
  it("are written down for each", () => {
    expect(table.flatMap(({ causes }) => causes).sort()).toEqual(suppliedFaults.map(({ id }) => id).sort());
  });

  const cases = table.flatMap(({ causes, codes, because }) => causes.map((id) => ({ id, codes, because })));
  it.each(cases)("$id: $because", ({ id, codes }) => {
    const fault = suppliedFaults.find((candidate) => candidate.id === id);
    const car = new TestDrive(fault?.faults("middle"));
    car.set(keyOn).set(cranking).set(idling).set(turning(9)).wait(3);
    expect(["A1", "A2", "A3", "A4"].map((module) => car.codes(module))).toEqual(codes);
  });
});
