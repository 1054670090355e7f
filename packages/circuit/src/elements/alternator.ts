import { type AlternatorParameters, alternatorLaws } from "../laws/alternator";
import type { NodeName } from "../network";
import {
  type AlternatorRating,
  alternatorOhms,
  alternatorVolts,
  ratingVolts,
  regulatedVoltsAt,
} from "../physics/alternator-output";
import { type RectifierState, rectifiedMean, rectifiedSwing } from "../physics/rectifier-ripple";
import type { DevicePart, ElementDefinition } from "./definition";
import { celsius, finite, flag, notNegative, positive, share } from "./rules";

/**
 * Alternator with rectifier and regulator. Terminals by DIN 72552: `plus` B+, `minus` 31 (the case), optionally `sense`
 * (where the regulator looks; without it at its own B+) and `lamp` D+ (charge lamp and exciter). It delivers electrical
 * power only while it is turned. An operating point gives the mean of the rectified pulses; a transient gives the
 * pulses themselves unless `pulses` is false. Equations: laws/alternator; output curve: physics/alternator-output.
 */
export interface Alternator {
  readonly kind: "alternator";
  readonly id: string;
  readonly plus: NodeName;
  readonly minus: NodeName;
  readonly sense?: NodeName;
  readonly lamp?: NodeName;
  /** Speed of its shaft, rad/s (about 2 to 3 times the engine's); 0 stands still. */
  readonly radiansPerSecond: number;
  /** Set-point at 20 °C regulator temperature, V, at half field; default 14.4. */
  readonly regulatedVolts?: number;
  /** Default −0.01 V/K. */
  readonly voltsPerKelvin?: number;
  /** Regulator temperature, °C; default 20. */
  readonly celsius?: number;
  /** How much higher than at full field the sensed volts are at no field; default 0.1 V. */
  readonly bandVolts?: number;
  /** Full-field output at 13.5 V and `ratedRadiansPerSecond`, A; default 120. */
  readonly ratedAmps?: number;
  /** Default 628.3 (6000/min). */
  readonly ratedRadiansPerSecond?: number;
  /** Speed at which 13.5 V appear without load, rad/s; default 115.2 (1100/min). */
  readonly cutInRadiansPerSecond?: number;
  /** Stator and diodes, Ω; default 0.02. */
  readonly ohms?: number;
  /** From the sense terminal to 31, Ω; default 10 kΩ. */
  readonly senseOhms?: number;
  /** An open sense wire: the regulator holds B+ at the set-point plus this, V; default 2.5. */
  readonly senseFallbackVolts?: number;
  /** Part of the full field that can still be driven; default 1; 0 for an open field winding or worn-out brushes. */
  readonly fieldScale?: number;
  /** Time constant of the field winding, s; default 0.1. */
  readonly fieldSeconds?: number;
  /** Field winding and regulator from D+ to 31, Ω; default 10. */
  readonly fieldOhms?: number;
  /** Backward leak of the rectifier from B+ to 31, Ω; default 1e8. */
  readonly leakOhms?: number;
  /** One of the six main diodes is open, or shorted; default false. */
  readonly diodeOpen?: boolean;
  readonly diodeShorted?: boolean;
  /** Default 6. */
  readonly polePairs?: number;
  /** Default true. */
  readonly pulses?: boolean;
}

const rectifierOf = ({ diodeOpen, diodeShorted }: Alternator): RectifierState => {
  if (diodeShorted) return "shortedDiode";
  return diodeOpen ? "openDiode" : "sound";
};

const machine = (element: Alternator): string => `${element.id}#machine`;

const ratingOf = (element: Alternator): AlternatorRating => ({
  ratedAmps: element.ratedAmps ?? 120,
  ratedRadiansPerSecond: element.ratedRadiansPerSecond ?? 200 * Math.PI,
  cutInRadiansPerSecond: element.cutInRadiansPerSecond ?? (1100 * Math.PI) / 30,
  ohms: element.ohms ?? 0.02,
});

function parametersOf(element: Alternator): AlternatorParameters {
  const rating = ratingOf(element);
  return {
    emfVolts: alternatorVolts(rating, element.radiansPerSecond),
    sourceOhms: alternatorOhms(rating, element.radiansPerSecond),
    setVolts: regulatedVoltsAt(
      element.regulatedVolts ?? 14.4,
      element.celsius ?? 20,
      element.voltsPerKelvin ?? -0.01,
    ),
    bandVolts: element.bandVolts ?? 0.1,
    senseOhms: element.senseOhms ?? 1e4,
    senseFallbackVolts: element.senseFallbackVolts ?? 2.5,
    fieldScale: element.fieldScale ?? 1,
    fieldSeconds: element.fieldSeconds ?? 0.1,
    fieldOhms: element.fieldOhms ?? 10,
    leakOhms: element.leakOhms ?? 1e8,
    rectifier: rectifierOf(element),
    phasorRadiansPerSecond: (element.polePairs ?? 6) * element.radiansPerSecond,
    pulses: element.pulses ?? true,
  };
}

function lawOf({ sense, lamp }: Alternator) {
  if (sense === undefined) return lamp === undefined ? alternatorLaws.plain : alternatorLaws.lamp;
  return lamp === undefined ? alternatorLaws.sense : alternatorLaws.senseAndLamp;
}

export const alternatorDefinition: ElementDefinition<Alternator> = {
  fields: {
    radiansPerSecond: notNegative,
    regulatedVolts: positive,
    voltsPerKelvin: finite,
    celsius,
    bandVolts: positive,
    ratedAmps: positive,
    ratedRadiansPerSecond: positive,
    cutInRadiansPerSecond: positive,
    ohms: positive,
    senseOhms: positive,
    senseFallbackVolts: positive,
    fieldScale: share,
    fieldSeconds: positive,
    fieldOhms: positive,
    leakOhms: positive,
    diodeOpen: flag,
    diodeShorted: flag,
    polePairs: positive,
    pulses: flag,
  },
  required: ["radiansPerSecond"],
  terminals: ({ plus, minus, sense, lamp }) => [
    plus,
    ...(sense === undefined ? [] : [sense]),
    ...(lamp === undefined ? [] : [lamp]),
    minus,
  ],
  refuse(element) {
    if (element.diodeOpen && element.diodeShorted) {
      return { message: "diodeOpen and diodeShorted exclude each other.", field: "diodeShorted" };
    }
    const rating = ratingOf(element);
    if (rating.ratedRadiansPerSecond <= rating.cutInRadiansPerSecond) {
      return {
        message: "ratedRadiansPerSecond must be above cutInRadiansPerSecond.",
        field: "ratedRadiansPerSecond",
      };
    }
    const most = (alternatorVolts(rating, rating.ratedRadiansPerSecond) - ratingVolts) / rating.ratedAmps;
    if (rating.ohms < most) return undefined;
    return { message: `ohms must be below ${most} for the rated current to flow.`, field: "ohms" };
  },
  parts(element): readonly DevicePart[] {
    const nodes = alternatorDefinition.terminals(element);
    return [
      { kind: "device", id: machine(element), nodes, law: lawOf(element), parameters: parametersOf(element) },
    ];
  },
  amps: (element) => [[machine(element), 1]],
  quantities(element, _state, look) {
    const p = parametersOf(element);
    const amps = look.internal(machine(element), "ampsOutput");
    const field = look.internal(machine(element), "fieldShare");
    return {
      ampsOutput: amps,
      fieldShare: field,
      setVolts: p.setVolts,
      /** Ripple of the EMF, peak to peak, and what it lies behind: see rippleVolts. */
      rippleVoltsSource: rectifiedSwing[p.rectifier] * p.emfVolts * field,
      sourceOhms: p.sourceOhms,
      /** Power of the EMF, without friction and field. */
      wattsShaft: rectifiedMean[p.rectifier] * p.emfVolts * field * amps,
    };
  },
};
