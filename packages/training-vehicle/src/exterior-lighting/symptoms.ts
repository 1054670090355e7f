import type { Expression, VehicleDocument } from "@probeworthy/vehicle";
import {
  absolute,
  and,
  atLeast,
  choose,
  chosen,
  condition,
  divide,
  filamentAmps,
  greater,
  least,
  loadAmps,
  most,
  not,
  or,
} from "../expressions";

type Symptom = VehicleDocument["symptoms"][number];

/** Current of a lamp as a share of its nominal current at 12 V. */
const share = (amps: Expression, watts: number): Expression => divide(absolute(amps), watts / 12);

/** Filament current follows the square root of the voltage about: 0.9 of it means a lamp that is visibly dim. */
const bands = (name: string): Symptom["bands"] => [
  { below: -1.5, text: `${name}: glows although it is not switched on`, normal: false },
  { below: -0.5, text: `${name}: off`, normal: true },
  { below: 0.2, text: `${name}: stays dark`, normal: false },
  { below: 0.55, text: `${name}: only a glow`, normal: false },
  { below: 0.89, text: `${name}: dim`, normal: false },
  { below: 1.25, text: `${name}: bright`, normal: true },
  { text: `${name}: far too bright`, normal: false },
];

/** Below this share nobody sees a filament glow. */
const visible = 0.22;

const brightness = (id: string, title: string, on: Expression, value: Expression): Symptom => ({
  id,
  title,
  value: choose(on, value, choose(greater(value, visible), -2, -1)),
  bands: bands(title.toLowerCase()),
});

const sideOn = atLeast(condition("lightSwitch"), 0.5);
const dippedSwitch = chosen("lightSwitch", 2);
const mainOn = and(dippedSwitch, chosen("mainBeam", 1));
const dippedOn = and(dippedSwitch, not(chosen("mainBeam", 1)));
const brakeOn = chosen("brakePedal", 1);
const keyOn = atLeast(condition("key"), 1.5);
const reverseOn = and(keyOn, chosen("reverse", 1));
const hazard = chosen("indicator", 3);
const leftOn = or(hazard, and(keyOn, chosen("indicator", 1)));
const rightOn = or(hazard, and(keyOn, chosen("indicator", 2)));
const coupled = chosen("trailer", 1);
const starting = chosen("key", 3);

const lampShare = (id: string, watts: number): Expression => share(loadAmps(id), watts);
const filament = (id: string, which: "first" | "second", watts: number): Expression =>
  share(filamentAmps(id, which), watts);

/** The weaker of two lamps that are on together, the brighter one while they are off. */
const pair = (on: Expression, a: Expression, b: Expression): Expression =>
  choose(on, least(a, b), most(a, b));

const indicators = (id: string, title: string, on: Expression, front: string, rear: string): Symptom =>
  brightness(id, title, on, pair(on, lampShare(front, 21), lampShare(rear, 21)));

const trailerPair = (
  id: string,
  title: string,
  on: Expression,
  first: string,
  second: string,
  watts: number,
): Symptom => {
  const pulled = and(coupled, on);
  return brightness(id, title, pulled, pair(pulled, lampShare(first, watts), lampShare(second, watts)));
};

/** What somebody who walks round the car sees and hears. */
export const lightingSymptoms: Symptom[] = [
  brightness("dippedLeft", "Dipped beam left", dippedOn, filament("E3", "first", 55)),
  brightness("dippedRight", "Dipped beam right", dippedOn, filament("E4", "first", 55)),
  brightness("mainLeft", "Main beam left", mainOn, filament("E3", "second", 60)),
  brightness("mainRight", "Main beam right", mainOn, filament("E4", "second", 60)),
  brightness("sideLeft", "Front side lamp left", sideOn, lampShare("E5", 5)),
  brightness("sideRight", "Front side lamp right", sideOn, lampShare("E6", 5)),
  brightness("tailLeft", "Tail lamp left", sideOn, filament("E11", "first", 5)),
  brightness("tailRight", "Tail lamp right", sideOn, filament("E12", "first", 5)),
  brightness("brakeLeft", "Brake lamp left", brakeOn, filament("E11", "second", 21)),
  brightness("brakeRight", "Brake lamp right", brakeOn, filament("E12", "second", 21)),
  {
    ...brightness("brakeHigh", "High brake lamp", brakeOn, divide(absolute(loadAmps("E18")), 0.22)),
    bands: [
      { below: -1.5, text: "high brake lamp: glows although nobody brakes", normal: false },
      { below: -0.5, text: "high brake lamp: off", normal: true },
      { below: 0.1, text: "high brake lamp: stays dark", normal: false },
      { below: 0.4, text: "high brake lamp: dim", normal: false },
      { text: "high brake lamp: bright", normal: true },
    ],
  },
  brightness("plate", "Number plate lamp", sideOn, lampShare("E17", 5)),
  brightness(
    "reversing",
    "Reversing lamps",
    reverseOn,
    pair(reverseOn, lampShare("E15", 21), lampShare("E16", 21)),
  ),
  indicators("indicatorLeft", "Indicators left", leftOn, "E7", "E13"),
  indicators("indicatorRight", "Indicators right", rightOn, "E8", "E14"),
  brightness("repeaterLeft", "Side repeater left", leftOn, lampShare("E9", 5)),
  brightness("repeaterRight", "Side repeater right", rightOn, lampShare("E10", 5)),
  {
    id: "flashRate",
    title: "Flashing",
    value: choose(or(leftOn, rightOn), choose({ signal: "indicatorFast", of: "A5" }, 1, 0), -1),
    bands: [
      { below: -0.5, text: "no indicator is on", normal: true },
      { below: 0.5, text: "flashes at its usual pace", normal: true },
      { text: "flashes twice as fast", normal: false },
    ],
  },
  {
    id: "horn",
    title: "Horn",
    value: choose(
      chosen("horn", 1),
      choose(starting, 4, absolute(loadAmps("E19"))),
      choose(greater(absolute(loadAmps("E19")), 0.5), -2, -1),
    ),
    bands: [
      { below: -1.5, text: "sounds although nobody presses the button", normal: false },
      { below: -0.5, text: "quiet", normal: true },
      { below: 1, text: "stays silent", normal: false },
      { below: 3.4, text: "croaks", normal: false },
      { text: "sounds loud and clear", normal: true },
    ],
  },
  trailerPair("trailerTail", "Trailer tail lamps", sideOn, "E34", "E35", 5),
  trailerPair("trailerBrake", "Trailer brake lamps", brakeOn, "E32", "E33", 21),
  trailerPair("trailerLeft", "Trailer indicator left", leftOn, "E30", "E30", 21),
  trailerPair("trailerRight", "Trailer indicator right", rightOn, "E31", "E31", 21),
];
