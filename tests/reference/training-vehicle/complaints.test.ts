import { steeringScenarios, trainingVehicle } from "@probeworthy/training-vehicle";
import type { ConditionValues } from "@probeworthy/vehicle";
import { describe, expect, it } from "vitest";
import { type Severity, suppliedFaults } from "./supplied-faults";
import { cranking, idling, keyOn, TestDrive, turning } from "./test-drive";

/** What the customers of each job describe, as symptom → words that must be among what the car shows. */
const complained: Readonly<Record<string, readonly (readonly [symptom: string, text: RegExp])[]>> = {
  "heavy-all-at-once": [
    ["steeringWeight", /no assist at all/],
    ["steeringWarningLamp", /on with the engine running/],
  ],
  "steering-asleep": [
    ["steeringWeight", /no assist at all/],
    ["steeringWarningLamp", /on with the engine running/],
  ],
  "third-fuse-this-week": [["steeringWeight", /no assist at all/]],
  "gives-up-in-tight-turns": [
    ["steeringWeight", /heavier than usual/],
    ["steeringWarningLamp", /on with the engine running/],
  ],
  "slow-start-heavy-start": [
    ["cranking", /cranks slowly/],
    ["steeringWeight", /no assist at all/],
  ],
  "lamp-on-damp-days": [["steeringWarningLamp", /on with the engine running/]],
  "no-help-after-column-work": [
    ["steeringWeight", /no assist at all/],
    ["steeringWarningLamp", /on with the engine running/],
  ],
  "lamp-after-new-radio": [
    ["steeringWeight", /no assist at all/],
    ["steeringWarningLamp", /on with the engine running/],
  ],
  "cut-out-on-a-bump": [
    ["steeringWeight", /no assist at all/],
    ["steeringWarningLamp", /on with the engine running/],
  ],
  "wanders-to-one-side": [["steeringPull", /by itself/]],
  "help-gone-after-seat-heater": [
    ["steeringWeight", /no assist at all/],
    ["steeringWarningLamp", /on with the engine running/],
  ],
  "tired-after-parking-practice": [["steeringWeight", /heavier than usual/]],
  "heavier-on-the-motorway": [],
  "no-help-in-either-direction": [
    ["steeringWeight", /no assist at all/],
    ["steeringWarningLamp", /on with the engine running/],
  ],
  "heavy-only-when-parking": [
    ["steeringWeight", /much heavier than usual/],
    ["steeringWarningLamp", /on with the engine running/],
  ],
  "lamp-but-steers-well": [["steeringWarningLamp", /on with the engine running/]],
  "many-lamps-at-once": [
    ["steeringWeight", /much heavier than usual/],
    ["steeringWarningLamp", /on with the engine running/],
  ],
};

/** A short drive a service adviser would take: start the car, park, drive, without switching off in between. */
const drive: readonly ConditionValues[] = [
  keyOn,
  cranking,
  idling,
  turning(4),
  turning(9),
  turning(-9),
  turning(6, 100),
  idling,
];

interface Shown {
  readonly symptom: string;
  readonly text: string;
  readonly normal: boolean;
}

function show(id: string, severity: Severity): readonly Shown[] {
  const fault = suppliedFaults.find((candidate) => candidate.id === id);
  const car = new TestDrive(fault?.faults(severity));
  return drive.flatMap((conditions) =>
    car.set(conditions).now.symptoms.map(({ id: symptom, text, normal }) => ({ symptom, text, normal })),
  );
}

describe("every job shows its complaint on a short drive", () => {
  it("knows the complaint of every job but the mixed one", () => {
    expect(Object.keys(complained)).toEqual(steeringScenarios.slice(0, -1).map(({ id }) => id));
  });

  const cases = suppliedFaults.flatMap((fault) =>
    (["mild", "severe"] as const).map((severity) => ({ fault, severity, id: fault.id })),
  );
  it.each(cases)("$id, $severity", ({ fault, severity }) => {
    const shown = show(fault.id, severity);
    for (const [symptom, text] of complained[fault.scenario.id] ?? []) {
      const seen = shown.filter((entry) => entry.symptom === symptom).map((entry) => entry.text);
      expect(
        seen.some((words) => text.test(words)),
        `${symptom}: ${seen.join(" · ")}`,
      ).toBe(true);
    }
    const abnormal = shown.filter(({ normal }) => !normal);
    if (fault.id === "works-as-designed") expect(abnormal).toEqual([]);
    else expect(abnormal).not.toEqual([]);
  });

  it("declares as normal what is no fault, and nothing else", () => {
    expect(
      suppliedFaults
        .filter(({ normal }) => normal)
        .map(({ id }) => id)
        .sort(),
    ).toEqual(["motor-hot", "works-as-designed"]);
  });

  it("shows nothing abnormal on a healthy car, which is heavier in N·m of help at speed and says so nowhere", () => {
    expect(show("works-as-designed", "middle").every(({ normal }) => normal)).toBe(true);
    const parked = new TestDrive([], turning(6));
    const fast = new TestDrive([], turning(6, 100));
    expect(fast.motorAmps).toBeLessThan(0.5 * parked.motorAmps);
    expect(fast.codes("A1")).toEqual([]);
  });

  it("keeps the steering quiet about a steering that assists although it is not heard", () => {
    for (const { pool } of steeringScenarios.filter(({ id }) => id === "lamp-but-steers-well"))
      for (const { id } of pool)
        expect(
          show(id, "middle").filter(({ symptom, normal }) => symptom === "steeringWeight" && !normal),
        ).toEqual([]);
  });

  it("has its symptoms named in the vehicle", () => {
    const known = trainingVehicle.symptoms.map(({ id }) => id);
    for (const entries of Object.values(complained))
      for (const [symptom] of entries) expect(known).toContain(symptom);
  });
});
