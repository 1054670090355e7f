import type { Alternator } from "../kinds/alternator";
import { type AlternatorParameters, alternatorLaws } from "../laws/alternator";
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
