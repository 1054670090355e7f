import type { Network } from "@probeworthy/circuit";
import type { TransientCase } from "./transient-cases";

type Suppressor = NonNullable<(Network["elements"][number] & { kind: "relay" })["suppressor"]>;

const ohms = 85;
const henries = 0.4;
const coreOhms = 50 * ohms;
const pullInAmps = 6.8 / ohms;
const dropOutAmps = 2.4 / ohms;
/** When the switch on the supply side moves, and how long that takes in ngspice. */
const movesAt = 2e-3;
const edge = 1e-9;

/** A 12.6 V supply, a switch, the coil; the contact feeds a lamp's resistance from a supply of its own. */
function moves(isClosing: boolean, suppressor: Suppressor, theirs: readonly string[]): TransientCase {
  const [before, after] = isClosing ? [0, 1] : [1, 0];
  return {
    network: {
      ground: "0",
      elements: [
        { kind: "voltageSource", id: "v", positive: "a", negative: "0", volts: 12.6, ohms: 0.05 },
        { kind: "voltageSource", id: "feed", positive: "f", negative: "0", volts: 12.6, ohms: 0.05 },
        { kind: "switch", id: "s", a: "a", b: "b", closed: !isClosing, closedOhms: 0.01, openOhms: 1e9 },
        {
          kind: "relay",
          id: "k",
          coilPlus: "b",
          coilMinus: "0",
          common: "f",
          normallyOpen: "c",
          ohms,
          henries,
          coreOhms,
          makeClosedOhms: 0.005,
          makeOpenOhms: 1e9,
          suppressor,
        },
        { kind: "resistor", id: "load", a: "c", b: "0", ohms: 12 },
      ],
    },
    run: {
      untilSeconds: 0.03,
      drives: [
        {
          element: "s",
          field: "closed",
          wave: { kind: "steps", times: [0, movesAt], values: [!isClosing, isClosing] },
        },
      ],
    },
    deck: [
      "v1 s 0 12.6",
      "rs s a 0.05",
      ".model gate sw(vt=0.5 vh=0 ron=0.01 roff=1e9)",
      `vg g 0 pwl(0 ${before} ${movesAt - edge / 2} ${before} ${movesAt + edge / 2} ${after})`,
      "s1 a b g 0 gate",
      "vk b k 0",
      `rc k w ${ohms}`,
      `lc w l ${henries}`,
      "vl l 0 0",
      `rcore w 0 ${coreOhms}`,
      ...theirs,
      // The armature: a switch that the coil's current moves, with hysteresis.
      `.model armature csw(it=${(pullInAmps + dropOutAmps) / 2} ih=${(pullInAmps - dropOutAmps) / 2} ron=0.005 roff=1e9)`,
      "vf q 0 12.6",
      "rf q f 0.05",
      `w1 f c vl armature ${isClosing ? "off" : "on"}`,
      "rl c 0 12",
    ],
    maxStepSeconds: 1e-6,
    compared: [
      { volts: "b", theirs: "v(b)" },
      { amps: "k", theirs: "i(vk)" },
      { amps: "v", theirs: "i(v1)" },
      { volts: "c", theirs: "v(c)" },
    ],
  };
}

const diodeAcross = [".model fly d(is=1e-10 n=1)", "d1 0 x fly", "rx x k 0.1"];

export const relayCases: Readonly<Record<string, TransientCase>> = {
  "relay pulled in, diode across the coil": moves(true, "diode", diodeAcross),
  "relay let go, nothing across the coil": moves(false, "none", []),
  "relay let go, resistor across the coil": moves(false, "resistor", ["rx k 0 680"]),
  "relay let go, diode across the coil": moves(false, "diode", diodeAcross),
};
