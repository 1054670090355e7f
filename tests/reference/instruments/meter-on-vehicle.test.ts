import { type MeterFunction, readMeter } from "@probeworthy/instruments";
import { trainingVehicle } from "@probeworthy/training-vehicle";
import { changeState, type Fault, prepareVehicle, startState, type VehicleState } from "@probeworthy/vehicle";
import { describe, expect, it } from "vitest";

function car(faults: Fault[] = [], conditions: Record<string, string | number> = {}) {
  const vehicle = prepareVehicle(trainingVehicle, faults);
  if (!vehicle.ok) throw new Error(JSON.stringify(vehicle.error));
  const state = startState(vehicle.value, conditions);
  if (!state.ok) throw new Error(JSON.stringify(state.error));
  const read = (meterFunction: MeterFunction, red: string, black: string, at: VehicleState = state.value) => {
    const answer = readMeter({
      vehicle: vehicle.value,
      state: at,
      function: meterFunction,
      red,
      black,
      meterFuse: "good",
    });
    if (!answer.ok) throw new Error(JSON.stringify(answer.error));
    return answer.value;
  };
  const after = (...changes: Parameters<typeof changeState>[2][]): VehicleState =>
    changes.reduce<VehicleState>((before, change) => {
      const changed = changeState(vehicle.value, before, change);
      if (!changed.ok) throw new Error(JSON.stringify(changed.error));
      return changed.value;
    }, state.value);
  return { read, after };
}

describe("the meter on the vehicle", () => {
  it("reads about 60 Ω between the bus wires of a car at rest, and about 120 Ω with one terminator gone", () => {
    // 60 Ω good, 120 Ω one terminator missing, OL both: source obd-cable.com, can-bus-health-check; accepted band
    // 54 to 69 Ω: a vehicle maker's service page (mymitchell RM3560U).
    // The body module is awake for minutes after the key: the battery comes off first, as in a workshop.
    const atRest = (faults: Parameters<typeof car>[0]): number => {
      const { read, after } = car(faults);
      return read("ohms", "X80:6", "X80:14", after({ unplug: "X2" })).reading.value ?? Number.NaN;
    };
    const both = atRest([]);
    expect(both).toBeGreaterThan(54);
    expect(both).toBeLessThan(69);
    const one = atRest([{ kind: "open", at: "W44" }]);
    expect(one).toBeGreaterThan(110);
    expect(one).toBeLessThan(126);
  });

  it("is signed: swapped leads swap the sign", () => {
    const { read } = car();
    const there = read("volts", "G1:+", "G1:-").reading;
    const back = read("volts", "G1:-", "G1:+").reading;
    expect(back.display).toBe(`-${there.display}`);
  });

  it("hardly loads what it measures: 10 MΩ on a bus divider moves nothing that is shown", () => {
    const { read } = car([], { key: "on" });
    const [high, low] = [read("volts", "X80:6", "body"), read("volts", "X80:14", "body")];
    // CANH usually 2.7 to 3.3 V and CANL 1.7 to 2.3 V on a meter, a running bus: source displaysimulator.deere.com,
    // can_high_low. Their sum is twice the recessive level.
    expect(high.reading.value).toBeGreaterThan(2.5);
    expect(high.reading.value).toBeLessThan(3.5);
    expect(low.reading.value).toBeGreaterThan(1.5);
    expect(low.reading.value).toBeLessThan(2.5);
  });

  it("reads nonsense in ohms where current flows, and remarks on it", () => {
    const { read } = car([], { key: "on", engineSpeed: 850, steeringEffort: 8 });
    const wire = read("ohms", "X10.2:h", "body");
    expect(wire.remarks).toEqual(["ohms_on_live_circuit"]);
    const dead = car().read("ohms", "X10.2:h", "body");
    expect(dead.remarks).toEqual([]);
    expect(dead.reading.value).toBeLessThan(0.5);
    expect(Math.abs(wire.reading.value ?? Number.POSITIVE_INFINITY)).toBeGreaterThan(5);
  });

  it("reads the current of a circuit when it bridges the empty holder of its fuse", () => {
    const { read, after } = car([], { key: "on" });
    const pulled = after({ pullFuse: "F11" });
    const current = read("amps", "F11:1", "F11:2", pulled);
    expect(current.blowsMeterFuse).toBe(false);
    expect(current.reading.value).toBeGreaterThan(0.05);
    expect(read("amps", "F11:2", "F11:1", pulled).reading.value).toBe(-(current.reading.value ?? Number.NaN));
  });

  it("loses its fuse across the battery", () => {
    const { read } = car();
    expect(read("amps", "G1:+", "G1:-")).toMatchObject({
      blowsMeterFuse: true,
      remarks: ["amps_across_supply", "meter_fuse_blown"],
    });
  });

  it("tells a good fuse in the hand from a melted one", () => {
    const good = car();
    expect(good.read("continuity", "F2:1:p", "F2:2:p", good.after({ pullFuse: "F2" })).reading.sounds).toBe(
      true,
    );
    const blown = car([{ kind: "fuseBlown", component: "F2" }]);
    const open = blown.read("ohms", "F2:1:p", "F2:2:p", blown.after({ pullFuse: "F2" })).reading;
    expect(open.display).toBe("OL");
  });
});
