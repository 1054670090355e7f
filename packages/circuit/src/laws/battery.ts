import type { DeviceLaw } from "../devices/law";
import {
  acceptanceOhms,
  acceptanceOhmsSlope,
  chargeEfficiency,
  chargeEfficiencySlope,
  dischargeOhmsFactor,
  dischargeOhmsFactorSlope,
  openVoltsAt,
  openVoltsPerKelvin,
  openVoltsSlope,
} from "../physics/battery-charge";
import type { MonotoneCurve } from "../physics/monotone-curve";
import { positivePart, positivePartSlope } from "./bends";

export interface BatteryParameters {
  readonly curve: MonotoneCurve;
  /** Cells in use over the six of the curve. */
  readonly cellShare: number;
  /** Added to the curve. */
  readonly voltsAbove: number;
  /** Kelvin above the temperature of the curve. */
  readonly kelvinAbove: number;
  /** Full battery at its temperature: what answers at once. */
  readonly ohms: number;
  /** Full battery at its temperature: what follows with polarisationSeconds. */
  readonly polarisationOhms: number;
  readonly polarisationSeconds: number;
  readonly acceptanceScale: number;
  readonly capacityAmpereHours: number;
  readonly stateOfCharge: number;
}

/** Charging current from which on the acceptance resistance counts in full, A. */
const chargeBend = 0.01;

const AMPS = 1;
const POLARISATION = 2;
const CHARGE = 3;

/**
 * Lead-acid battery, terminals positive and negative. With i the amps into the positive terminal, s the state of charge,
 * p the volts of polarisation and i⁺ what of i is charging current:
 *
 *   v = open(s) + p + R(s)·i
 *   τ·dp/dt = Rp(s)·i + Ra(s)·i⁺ − p
 *   3600·capacity·ds/dt = i − i⁺·(1 − efficiency(s))
 *
 * so that cranking dips at once by R·i and further with τ, and a ripple sees R alone. An operating point holds s.
 */
export const batteryLaw: DeviceLaw<BatteryParameters> = {
  terminals: 2,
  internals: [
    { name: "amps", tolerance: 1e-9 },
    { name: "voltsPolarisation", tolerance: 1e-9 },
    { name: "stateOfCharge", tolerance: 1e-9 },
  ],
  evaluate(p, x, out) {
    const n = out.size;
    const i = x[AMPS];
    const s = x[CHARGE];
    const factor = dischargeOhmsFactor(s);
    const factorSlope = dischargeOhmsFactorSlope(s);
    out.f[0] = i;
    out.df[AMPS] = 1;

    const open = p.cellShare * (openVoltsAt(p.curve, s) + p.voltsAbove + openVoltsPerKelvin * p.kelvinAbove);
    out.f[AMPS] = open + x[POLARISATION] + p.ohms * factor * i - x[0];
    out.df[AMPS * n] = -1;
    out.df[AMPS * n + AMPS] = p.ohms * factor;
    out.df[AMPS * n + POLARISATION] = 1;
    out.df[AMPS * n + CHARGE] = p.cellShare * openVoltsSlope(p.curve, s) + p.ohms * factorSlope * i;

    const charging = positivePart(i, chargeBend);
    const chargingSlope = positivePartSlope(i, chargeBend);
    const acceptance = p.acceptanceScale * acceptanceOhms(p.capacityAmpereHours, s);
    const acceptanceSlope = p.acceptanceScale * acceptanceOhmsSlope(p.capacityAmpereHours, s);
    const row = POLARISATION * n;
    out.f[POLARISATION] = x[POLARISATION] - p.polarisationOhms * factor * i - acceptance * charging;
    out.df[row + POLARISATION] = 1;
    out.df[row + AMPS] = -p.polarisationOhms * factor - acceptance * chargingSlope;
    out.df[row + CHARGE] = -p.polarisationOhms * factorSlope * i - acceptanceSlope * charging;
    out.q[POLARISATION] = p.polarisationSeconds * x[POLARISATION];
    out.dq[row + POLARISATION] = p.polarisationSeconds;

    const last = CHARGE * n;
    const coulombs = 3600 * p.capacityAmpereHours;
    out.q[CHARGE] = coulombs * s;
    out.dq[last + CHARGE] = coulombs;
    if (out.isStatic) {
      out.f[CHARGE] = s - p.stateOfCharge;
      out.df[last + CHARGE] = 1;
      return;
    }
    const lost = 1 - chargeEfficiency(s);
    out.f[CHARGE] = lost * charging - i;
    out.df[last + AMPS] = lost * chargingSlope - 1;
    out.df[last + CHARGE] = -chargeEfficiencySlope(s) * charging;
  },
  initial: (p) => [0, 0, p.stateOfCharge],
};
