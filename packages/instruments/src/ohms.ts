import { ok, type Result, type VehicleError } from "@probeworthy/vehicle";
import { overload, showOnRange } from "./display";
import { meter, type OhmsRange, ohmRanges } from "./meter";
import type { MeterCircuit } from "./meter-circuit";
import type { Reading } from "./reading";

/**
 * Resistance by ratio, as a hand-held does it: 0.4 V behind the range's reference resistor feeds the part under test,
 * and the display shows R = Rref · Vx / (0.4 V − Vx), Vx being the voltage the meter finds at its own sockets.
 * A voltage that comes from the circuit is measured along with it, so on a live circuit the figure is nonsense:
 * too high, too low, negative or `OL`, whatever the arithmetic gives.
 */
function onRange(
  circuit: MeterCircuit,
  range: OhmsRange,
  meterFunction: "ohms" | "continuity",
): Result<Reading, VehicleError> {
  const behind = range.referenceOhms + meter.leadOhms;
  const atPoints = circuit({ ohms: behind, amps: meter.ohmsOpenVolts / behind });
  if (!atPoints.ok) return atPoints;
  const amps = (meter.ohmsOpenVolts - atPoints.value) / behind;
  // At or above its own open voltage the converter is full.
  if (amps <= 0) return ok(overload(meterFunction, range));
  return ok(showOnRange(meterFunction, atPoints.value / amps + meter.leadOhms, range));
}

/**
 * Ohms with autorange from the lowest range up, or on the range that is held.
 * @param held name of a range, such as `600 Ω`; unknown names are our own bug and throw
 */
export function readOhms(circuit: MeterCircuit, held?: string): Result<Reading, VehicleError> {
  if (held !== undefined) {
    const range = ohmRanges.find((candidate) => candidate.name === held);
    if (range === undefined) throw new Error(`the meter has no ohms range named ${held}`);
    return onRange(circuit, range, "ohms");
  }
  let reading = onRange(circuit, ohmRanges[0], "ohms");
  for (const range of ohmRanges.slice(1)) {
    if (!reading.ok || reading.value.state === "value") return reading;
    reading = onRange(circuit, range, "ohms");
  }
  return reading;
}

/** Continuity: the 600 Ω range with a tone below 30 Ω. */
export function readContinuity(circuit: MeterCircuit): Result<Reading, VehicleError> {
  const reading = onRange(circuit, ohmRanges[0], "continuity");
  if (!reading.ok) return reading;
  const { value } = reading.value;
  return ok({ ...reading.value, sounds: value !== null && value < meter.continuityBelowOhms });
}
