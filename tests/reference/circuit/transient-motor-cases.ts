import type { Network } from "@probeworthy/circuit";
import type { TransientCase } from "./transient-cases";

type Motor = Network["elements"][number] & { kind: "motor" };

/**
 * A motor as an analog circuit: torque is current into node w, speed is the volts of w, inertia a capacitance there.
 * The equations are those stated with the element; friction and brushes as behavioural sources.
 */
export function motorAnalog(motor: Motor, plus: string, minus: string, i = ""): readonly string[] {
  const { viscousFriction = 0, coulombFriction = 0, loadTorque = 0, loadPerSpeed = 0 } = motor;
  const { loadPerSpeedSquared = 0, shaftTorque = 0, brushVolts = 0, motorConstant } = motor;
  const { henries = 1e-3 * motor.ohms, inertia = 1e-4 } = motor;
  const amps = `i(vm${i})`;
  const w = `v(w${i})`;
  const drag = `${viscousFriction + loadPerSpeed}*${w}+${loadPerSpeedSquared}*abs(${w})*${w}`;
  return [
    `vm${i} ${plus} m${i}a 0`,
    `rm${i} m${i}a m${i}b ${motor.ohms}`,
    `lm${i} m${i}b m${i}c ${henries} ic=0`,
    `bm${i} m${i}c ${minus} v=${motorConstant}*${w}+${brushVolts}*tanh(${amps}/0.1)`,
    `bw${i} 0 w${i} i=${motorConstant}*${amps}+${shaftTorque}-(${drag})-${coulombFriction + loadTorque}*tanh(${w}/0.1)`,
    `cw${i} w${i} 0 ${inertia} ic=0`,
  ];
}

function start(motor: Omit<Motor, "kind" | "id" | "plus" | "minus">, untilSeconds: number): TransientCase {
  const whole: Motor = { kind: "motor", id: "m", plus: "b", minus: "0", ...motor };
  return {
    network: {
      ground: "0",
      elements: [
        { kind: "voltageSource", id: "v", positive: "a", negative: "0", volts: 12.6, ohms: 0.01 },
        { kind: "resistor", id: "wire", a: "a", b: "b", ohms: 0.02 },
        whole,
      ],
    },
    run: { untilSeconds, start: "rest" },
    deck: ["v1 s 0 12.6", "rs s a 0.01", "rw a b 0.02", ...motorAnalog(whole, "b", "0")],
    maxStepSeconds: untilSeconds / 50_000,
    compared: [
      { amps: "m", theirs: "i(vm)" },
      { volts: "b", theirs: "v(b)" },
      { quantity: ["m", "radiansPerSecond"], theirs: "v(w)" },
    ],
  };
}

export const fanMotor = {
  ohms: 0.25,
  henries: 0.3e-3,
  motorConstant: 0.04,
  inertia: 4e-4,
  viscousFriction: 2e-5,
  loadPerSpeedSquared: 6e-6,
};

export const motorCases: Readonly<Record<string, TransientCase>> = {
  "motor of a fan starts": start(fanMotor, 0.8),
  "motor with friction and brushes starts": start(
    { ...fanMotor, coulombFriction: 0.05, loadTorque: 0.1, brushVolts: 0.8, loadPerSpeed: 1e-4 },
    0.6,
  ),
};
