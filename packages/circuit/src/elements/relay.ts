import type { Relay } from "../kinds/relay";
import { armatureLaw } from "../laws/relay-armature";
import { windingOhmsFactor } from "../physics/copper-winding";
import type { ElementDefinition, Guard, Look, Part } from "./definition";
import {
  contactsOf,
  energised,
  lengthOf,
  motionIn,
  phaseOf,
  released,
  stateOf,
  travelOf,
} from "./relay-contacts";
import { celsius, flag, notNegative, positive } from "./rules";

const suppressors: readonly unknown[] = [undefined, "none", "resistor", "diode", "reversedDiode"];

const part = (element: Relay, name: string): string => `${element.id}#${name}`;
const suppressorOf = ({ suppressor = "none" }: Relay) => suppressor;

function coilParts(element: Relay, timed: boolean): readonly Part[] {
  const { coilPlus, coilMinus, ohms = 85, henries = 0.4 } = element;
  const winding = part(element, "winding");
  const copper = ohms * windingOhmsFactor(element.celsius ?? 20);
  const coil = { kind: "resistor", id: part(element, "coil"), a: coilPlus, ohms: copper } as const;
  // A steady current sees no inductance: an operating point has one unknown less.
  if (!timed) return [{ ...coil, b: coilMinus }];
  return [
    { ...coil, b: winding },
    { kind: "inductor", id: winding, a: winding, b: coilMinus, henries },
    {
      kind: "resistor",
      id: part(element, "core"),
      a: winding,
      b: coilMinus,
      ohms: element.coreOhms ?? 50 * ohms,
    },
  ];
}

function suppressorParts(element: Relay): readonly Part[] {
  const { coilPlus, coilMinus, suppressorOhms } = element;
  const id = part(element, "suppressor");
  const suppressor = suppressorOf(element);
  if (suppressor === "none") return [];
  if (suppressor === "resistor") {
    return [{ kind: "resistor", id, a: coilPlus, b: coilMinus, ohms: suppressorOhms ?? 680 }];
  }
  const inner = part(element, "cathode");
  const [anode, cathode] = suppressor === "diode" ? [coilMinus, coilPlus] : [coilPlus, coilMinus];
  return [
    { kind: "diode", id, anode, cathode: inner, saturationAmps: 1e-10 },
    { kind: "resistor", id: inner, a: inner, b: cathode, ohms: suppressorOhms ?? 0.1 },
  ];
}

function contactParts(element: Relay, state: number): readonly Part[] {
  const closed = contactsOf(state, travelOf(element));
  const { common, normallyOpen, normallyClosed } = element;
  const parts: Part[] = [];
  if (normallyOpen !== undefined) {
    parts.push({
      kind: "switch",
      id: part(element, "make"),
      a: common,
      b: normallyOpen,
      closed: closed.make,
      closedOhms: element.makeClosedOhms ?? 5e-3,
      openOhms: element.makeOpenOhms ?? 1e12,
    });
  }
  if (normallyClosed !== undefined) {
    parts.push({
      kind: "switch",
      id: part(element, "break"),
      a: common,
      b: normallyClosed,
      closed: closed.break,
      closedOhms: element.breakClosedOhms ?? 5e-3,
      openOhms: element.breakOpenOhms ?? 1e12,
    });
  }
  return parts;
}

function armatureParts(element: Relay, state: number, timed: boolean): readonly Part[] {
  const travel = travelOf(element);
  if (!timed || travel === undefined) return [];
  return [
    {
      kind: "device",
      id: part(element, "armature"),
      nodes: [element.coilPlus, element.coilMinus],
      law: armatureLaw,
      parameters: motionIn(state, travel),
    },
  ];
}

/** Amps of the winding above pull-in and below drop-out; 1 and −1 for an armature that sticks. */
function pullsAndDrops(element: Relay, look: Look, timed: boolean): readonly [number, number] {
  if (element.heldEnergised) return [1, -1];
  if (element.heldReleased) return [-1, 1];
  const { ohms = 85, pullInVolts = 6.8, dropOutVolts = 2.4 } = element;
  const amps = Math.abs(look.amps(part(element, timed ? "winding" : "coil")));
  return [amps - pullInVolts / ohms, dropOutVolts / ohms - amps];
}

/** The first guard turns the armature round, the second (only where it takes time) carries it on. */
function guardsOf(element: Relay, state: number, look: Look, timed: boolean): readonly Guard[] {
  const [pulls, drops] = pullsAndDrops(element, look, timed);
  const travel = travelOf(element);
  const phase = phaseOf(state, travel);
  const isUp = phase === undefined ? state === energised : phase.way === "up";
  const value = isUp ? drops : pulls;
  if (travel === undefined || !timed) return [{ value, next: isUp ? released : energised }];
  const turn = { value, next: stateOf(isUp ? "down" : "up", 0, travel) };
  if (phase === undefined) return [turn, { value: -1, next: state }];
  const come = look.internal(part(element, "armature"), "secondsTravelled");
  const { length, backRate } = lengthOf(travel);
  const on = isUp ? come - travel.up[phase.index] : length + backRate * travel.down[phase.index] - come;
  return [turn, { value: on, next: stateOf(phase.way, phase.index + 1, travel) }];
}

const isListOfEdges = (edges: readonly number[]): boolean =>
  Array.isArray(edges) &&
  edges.length % 2 === 0 &&
  edges.every((seconds, i) => Number.isFinite(seconds) && seconds > (i === 0 ? 0 : edges[i - 1]));

export const relayDefinition: ElementDefinition<Relay> = {
  fields: {
    ohms: positive,
    henries: positive,
    coreOhms: positive,
    celsius,
    pullInVolts: positive,
    dropOutVolts: positive,
    suppressorOhms: positive,
    makeClosedOhms: positive,
    makeOpenOhms: positive,
    breakClosedOhms: positive,
    breakOpenOhms: positive,
    heldReleased: flag,
    heldEnergised: flag,
    operateTravelSeconds: notNegative,
    releaseTravelSeconds: notNegative,
  },
  required: [],
  topological: ["operateTravelSeconds", "releaseTravelSeconds"],
  terminals: ({ coilPlus, coilMinus, common, normallyOpen, normallyClosed }) => [
    coilPlus,
    coilMinus,
    common,
    ...(normallyOpen === undefined ? [] : [normallyOpen]),
    ...(normallyClosed === undefined ? [] : [normallyClosed]),
  ],
  refuse(element) {
    const {
      normallyOpen,
      normallyClosed,
      pullInVolts = 6.8,
      dropOutVolts = 2.4,
      bounceSeconds = [],
    } = element;
    if (normallyOpen === undefined && normallyClosed === undefined) {
      return { message: "give normallyOpen or normallyClosed, or both.", field: "normallyOpen" };
    }
    if (!(dropOutVolts < pullInVolts)) {
      return { message: "dropOutVolts must be below pullInVolts.", field: "dropOutVolts" };
    }
    if (element.heldReleased && element.heldEnergised) {
      return { message: "heldReleased and heldEnergised exclude each other.", field: "heldEnergised" };
    }
    if (!suppressors.includes(element.suppressor)) {
      return { message: "suppressor must be none, resistor, diode or reversedDiode.", field: "suppressor" };
    }
    if (isListOfEdges(bounceSeconds)) return undefined;
    return {
      message: "bounceSeconds must be times above 0 that rise, even in number: open, closed, …",
      field: "bounceSeconds",
    };
  },
  parts: (element, state, timed) => [
    ...coilParts(element, timed),
    ...suppressorParts(element),
    ...contactParts(element, state),
    ...armatureParts(element, state, timed),
  ],
  amps(element) {
    const suppressor = suppressorOf(element);
    const coil = [part(element, "coil"), 1] as const;
    if (suppressor === "none") return [coil];
    return [coil, [part(element, "suppressor"), suppressor === "diode" ? -1 : 1]];
  },
  initialState: ({ heldEnergised }) => (heldEnergised ? energised : released),
  guards: guardsOf,
  quantities(element, state, look) {
    const closed = contactsOf(state, travelOf(element));
    return {
      isEnergised: Number(closed.make),
      ampsCoil: look.amps(part(element, "coil")),
    };
  },
};
