/** Teeth of a ring, and metres a wheel rolls in one turn. */
const teeth = 48;
const metresPerTurn = 1.9;

/** Pulses a second at 1 km/h. */
export const pulsesPerKmh = teeth / metresPerTurn / 3.6;

interface Wheel {
  /** Signal of the brake module. */
  readonly name: string;
  readonly title: string;
  readonly code: string;
  /** Terminal where its pulses are counted. */
  readonly plus: string;
  readonly active: boolean;
}

export const wheels: readonly Wheel[] = [
  { name: "frontLeft", title: "Wheel speed front left", code: "C0031", plus: "SL", active: true },
  { name: "frontRight", title: "Wheel speed front right", code: "C0034", plus: "SR", active: true },
  { name: "rearLeft", title: "Wheel speed rear left", code: "C0037", plus: "RL+", active: false },
  { name: "rearRight", title: "Wheel speed rear right", code: "C003A", plus: "RR+", active: false },
];
