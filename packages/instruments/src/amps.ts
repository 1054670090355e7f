import { ok, type Result, type VehicleError } from "@probeworthy/vehicle";
import { blank, showOnRange } from "./display";
import { ampRanges, meter } from "./meter";
import type { MeterCircuit } from "./meter-circuit";
import type { Reading } from "./reading";

export interface AmpsReading {
  readonly reading: Reading;
  readonly blowsMeterFuse: boolean;
  /** The leads stood across a source with nothing in between to limit the current. */
  readonly acrossSupply: boolean;
}

const [lowRange, highRange] = [ampRanges[0], ampRanges[1] ?? ampRanges[0]];

/** Amps on the fused 10 A input: shunt and leads are in the circuit. Positive when current enters the red lead. */
export function readAmps(
  circuit: MeterCircuit,
  fuse: "good" | "open",
  openVolts: number,
): Result<AmpsReading, VehicleError> {
  if (fuse === "open") {
    return ok({ reading: blank("amps", highRange, "fuse_open"), blowsMeterFuse: false, acrossSupply: false });
  }
  const burden = meter.ampsShuntOhms + meter.leadOhms;
  const volts = circuit({ ohms: burden, amps: 0 });
  if (!volts.ok) return volts;
  const amps = volts.value / burden;
  if (Math.abs(amps) > meter.ampsFuseOpensAbove) {
    const sourceOhms = Math.abs(openVolts / amps) - burden;
    return ok({
      reading: blank("amps", highRange, "fuse_open"), // it flashes, then it is over
      blowsMeterFuse: true,
      acrossSupply: sourceOhms < meter.supplySourceOhmsBelow,
    });
  }
  const low = showOnRange("amps", amps, lowRange);
  return ok({
    reading: low.state === "value" ? low : showOnRange("amps", amps, highRange),
    blowsMeterFuse: false,
    acrossSupply: false,
  });
}
