import type { PrimitiveElement } from "@probeworthy/circuit";
import {
  ok,
  type PointId,
  type PreparedVehicle,
  type Result,
  settle,
  type VehicleError,
  type VehicleState,
} from "@probeworthy/vehicle";
import { readAmps } from "./amps";
import { blank, overload } from "./display";
import { ampRanges, meter, ohmRanges, voltRanges } from "./meter";
import type { MeterCircuit, MeterLoad } from "./meter-circuit";
import { readContinuity, readOhms } from "./ohms";
import type { MeterFunction, Reading } from "./reading";
import { readVolts } from "./volts";

/** For the review afterwards; never shown while the learner works. */
export type MeterRemark = "ohms_on_live_circuit" | "amps_across_supply" | "meter_fuse_blown";

export interface MeterQuestion {
  readonly vehicle: PreparedVehicle;
  readonly state: VehicleState;
  readonly function: MeterFunction;
  /** Where the tips are; null is a lead in the air. */
  readonly red: PointId | null;
  readonly black: PointId | null;
  readonly meterFuse: "good" | "open";
  /** Ohms only: hold this range (`600 Ω`) instead of ranging automatically. */
  readonly heldRange?: string;
}

export interface MeterAnswer {
  readonly reading: Reading;
  readonly blowsMeterFuse: boolean;
  readonly remarks: readonly MeterRemark[];
}

/**
 * Takes one reading. The meter is part of the circuit: its input resistance, its shunt or its test current stands
 * between the two points while the vehicle settles. Figures are rounded as displayed; see meter.ts for the meter.
 * Errors: those of `settle` (a point that does not exist, a circuit without solution). Whether a tip can physically
 * reach a point is not asked here.
 */
export function readMeter(question: MeterQuestion): Result<MeterAnswer, VehicleError> {
  const { red, black } = question;
  if (red === null || black === null) return ok(quiet(inTheAir(question.function)));
  const circuit = red === black ? touchingTips : between(question, red, black);
  switch (question.function) {
    case "volts": {
      const reading = readVolts(circuit);
      return reading.ok ? ok(quiet(reading.value)) : reading;
    }
    case "ohms":
    case "continuity": {
      const reading =
        question.function === "ohms" ? readOhms(circuit, question.heldRange) : readContinuity(circuit);
      if (!reading.ok) return reading;
      const before = circuit(null);
      if (!before.ok) return before;
      const live = Math.abs(before.value) > meter.liveAboveVolts;
      return ok({
        reading: reading.value,
        blowsMeterFuse: false,
        remarks: live ? ["ohms_on_live_circuit"] : [],
      });
    }
    case "amps": {
      const before = circuit(null);
      if (!before.ok) return before;
      const amps = readAmps(circuit, question.meterFuse, before.value);
      if (!amps.ok) return amps;
      const { reading, blowsMeterFuse, acrossSupply } = amps.value;
      const remarks: MeterRemark[] = blowsMeterFuse ? ["meter_fuse_blown"] : [];
      if (acrossSupply) remarks.unshift("amps_across_supply");
      return ok({ reading, blowsMeterFuse, remarks });
    }
  }
}

const quiet = (reading: Reading): MeterAnswer => ({ reading, blowsMeterFuse: false, remarks: [] });

function inTheAir(meterFunction: MeterFunction): Reading {
  if (meterFunction === "volts") return blank("volts", voltRanges[1] ?? voltRanges[0], "lead_open");
  if (meterFunction === "amps") return blank("amps", ampRanges[0], "lead_open");
  const range = meterFunction === "ohms" ? (ohmRanges[5] ?? ohmRanges[0]) : ohmRanges[0];
  return { ...overload(meterFunction, range), state: "lead_open" };
}

/** Both tips on one point: whatever the meter drives flows from tip to tip. */
const touchingTips: MeterCircuit = () => ok(0);

/** With the leads on, the current through the meter's own resistance tells the voltage at its sockets (Ohm's law). */
const between =
  ({ vehicle, state }: MeterQuestion, red: PointId, black: PointId): MeterCircuit =>
  (load) => {
    const settled = settle(vehicle, state, load === null ? [] : [input(load, red, black)]);
    if (!settled.ok) return settled;
    const { volts, amps } = settled.value;
    return ok(load === null ? volts(red) - volts(black) : (load.amps + amps("meter")) * load.ohms);
  };

/** One element, for each more is a further correction of every step of the solution: Thévenin's form of the load. */
const input = ({ ohms, amps }: MeterLoad, red: PointId, black: PointId): PrimitiveElement =>
  amps === 0
    ? { kind: "resistor", id: "meter", a: red, b: black, ohms }
    : { kind: "voltageSource", id: "meter", positive: red, negative: black, volts: amps * ohms, ohms };
