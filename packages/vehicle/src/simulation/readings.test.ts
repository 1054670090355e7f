import { describe, expect, it } from "vitest";
import type { Fault } from "../document/fault";
import { Drive, must } from "../testing/drive";
import { lead, module, moduleRig, numberCondition } from "../testing/module-rig";
import { scan } from "./scan";

const symptom = (
  id: string,
  value: NonNullable<ReturnType<typeof moduleRig>["symptoms"]>[number]["value"],
) => ({
  id,
  title: id,
  value,
  bands: [
    { below: 0.5, text: "none", normal: false },
    { text: "some", normal: true },
  ],
});

const rig = (faults: readonly Fault[] = []): Drive => {
  const document = moduleRig({
    modules: [
      module("A1", ["K", "CH", "CL"], {
        outputs: [{ kind: "lowSide", name: "relay", terminal: "K", on: 1, onOhms: 0.1 }],
        bus: {
          canHigh: "CH",
          canLow: "CL",
          terminationOhms: 60,
          dominantShare: 0,
          sends: [],
          receives: [],
        },
        signals: [{ name: "supply", value: { volts: "30" } }],
        scanValues: [{ name: "coolant", title: "Coolant", unit: "°C", decimals: 1, value: 88 }],
      }),
    ],
    components: [
      {
        kind: "relay",
        id: "K1",
        title: "Fan relay",
        contact: "make",
        coilOhms: 85,
        pullInVolts: 7,
        dropOutVolts: 3,
        contactOhms: 0.003,
      },
      {
        kind: "motor",
        id: "M1",
        title: "Fan",
        windingOhmsAt20: 0.2,
        torquePerAmp: 0.03,
        turning: { frictionTorque: 0.02, loadPerSpeedSquared: 5e-6 },
        gear: { ratio: 10, efficiency: 0.5 },
      },
      {
        kind: "twoFilamentLamp",
        id: "E1",
        title: "Stop and tail lamp",
        terminals: { common: "31", first: "54", second: "58" },
        ratedVolts: 12,
        firstWatts: 21,
        secondWatts: 5,
      },
      {
        kind: "passive",
        id: "X9",
        title: "Diagnostic socket",
        terminals: ["16", "4", "6", "14"],
        diagnosticSocket: { supply: "16", ground: "4", canHigh: "6", canLow: "14" },
      },
    ],
    conductors: [
      lead("W11", "XS1", "K1:86"),
      lead("W12", "K1:85", "A1:K"),
      lead("W13", "XS1", "K1:30"),
      lead("W14", "K1:87", "M1:1"),
      lead("W15", "M1:2", "XE1"),
      lead("W16", "XS1", "E1:58"),
      lead("W17", "E1:31", "XE1"),
      lead("W18", "XS1", "X9:16"),
      lead("W19", "X9:4", "XE1"),
      lead("W20", "A1:CH", "X9:6"),
      lead("W21", "A1:CL", "X9:14"),
    ],
    conditions: [numberCondition("unused", 0)],
  });
  return new Drive(
    faults,
    {},
    {
      ...document,
      symptoms: [
        symptom("turns", { speedOf: "M1" }),
        symptom("pulls", { torqueOf: "M1" }),
        symptom("clicks", { pulledIn: "K1" }),
        symptom("tail", { op: "multiply", args: [{ loadAmps: "E1", filament: "second" }, 2] }),
        symptom("stop", { loadAmps: "E1" }),
      ],
    },
  );
};

const seen = (drive: Drive): Record<string, string> =>
  Object.fromEntries(drive.now.symptoms.map(({ id, text }) => [id, text]));

describe("what is seen and measured of parts", () => {
  it("follows speed, torque, armature and each filament", () => {
    const drive = rig();
    expect(seen(drive)).toEqual({ turns: "some", pulls: "some", clicks: "some", tail: "some", stop: "none" });
    expect(drive.amps("K1:coil")).toBeCloseTo(drive.volts("K1:86", "K1:85") / 85, 4);
    expect(drive.amps("K1")).toBeCloseTo(drive.amps("M1"), 9);
    expect(drive.amps("E1:second")).toBeCloseTo(drive.amps("W16"), 9);
    expect(Math.abs(drive.amps("E1"))).toBeLessThan(1e-6);
  });

  it("stands still with a dead driver", () => {
    const drive = rig([{ kind: "driverDead", component: "A1", output: "relay" }]);
    expect(seen(drive)).toMatchObject({ turns: "none", pulls: "none", clicks: "none" });
  });

  it("turns without torque behind a broken coupling", () => {
    const drive = rig([{ kind: "couplingBroken", component: "M1" }]);
    expect(seen(drive)).toMatchObject({ turns: "some", pulls: "none" });
  });
});

describe("a scan value", () => {
  const value = (faults: readonly Fault[]): string | undefined => {
    const drive = rig(faults);
    const answer = must(scan(drive.vehicle, drive.state, "A1"));
    return answer.ok ? answer.values[0]?.text : answer.reason;
  };

  it("shows the truth, something beside it, or always the same", () => {
    const fault = { component: "A1", value: "coolant" } as const;
    expect(value([])).toBe("88.0");
    expect(value([{ kind: "scanValueWrong", ...fault, by: -12.5 }])).toBe("75.5");
    expect(value([{ kind: "scanValueStuck", ...fault, shows: 20 }])).toBe("20.0");
  });

  it("is not there when the module is silent", () => {
    expect(value([{ kind: "silentNode", component: "A1" }])).toBe("no_communication");
  });
});
