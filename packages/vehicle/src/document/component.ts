import { z } from "zod";
import { expressionSchema } from "./expression";
import { moduleSchema } from "./module";
import { camelNameSchema, designatorSchema, terminalNameSchema } from "./names";
import { zoneSchema } from "./zone";

const base = {
  id: designatorSchema,
  title: z.string().min(1),
  /** Where it sits in the vehicle, in shop words. */
  place: z.string().optional(),
  /** The field of the component-place plan it is drawn in. */
  zone: zoneSchema.optional(),
};
const ohms = z.number().positive();

/** Terminals `+` and `-`. Open-circuit volts follow the state of charge; see battery.ts for the curve. */
const batterySchema = z.strictObject({
  ...base,
  kind: z.literal("battery"),
  capacityAmpereHours: z.number().positive(),
  internalOhms: ohms,
  stateOfCharge: z.number().min(0).max(1),
});

/**
 * Terminals `B+`, `31` (its case), `S` when the regulator senses elsewhere and `D+` when it works a charge lamp. Charges
 * while the engine speed condition is above `minimumSpeed`.
 */
const chargingSourceSchema = z.strictObject({
  ...base,
  kind: z.literal("chargingSource"),
  regulatedVolts: z.number().positive(),
  outputOhms: ohms,
  limitAmps: z.number().positive(),
  speedCondition: camelNameSchema,
  minimumSpeed: z.number().positive(),
  /** Where the regulator looks: its own `B+` (default) or the wire at its terminal `S`. */
  sense: z.enum(["own", "wire"]).optional(),
  /** Present: terminal `D+`, which sinks the charge lamp's current while the machine does not charge, through these ohms. */
  lampOhms: ohms.optional(),
});

/** Terminals `1` and `2`, both sockets of the fuse holder. */
const fuseSchema = z.strictObject({
  ...base,
  kind: z.literal("fuse"),
  ratingAmps: z.number().positive(),
  /** Blade sizes after ISO 8820-3: type F (small blade), C (medium blade), E (large blade); bolted strips. */
  form: z.enum(["F", "C", "E", "bolted"]),
  coldOhms: ohms,
});

/** A rotary or push switch driven by a choice condition: which terminal pairs are joined in each position. */
const switchSchema = z.strictObject({
  ...base,
  kind: z.literal("switch"),
  terminals: z.array(terminalNameSchema).min(2),
  condition: camelNameSchema,
  positions: z.record(camelNameSchema, z.array(z.tuple([terminalNameSchema, terminalNameSchema]))),
  contactOhms: ohms,
});

/** Terminals `1` and `2`. A heater, a ballast, a horn by its mean current, a terminating resistor. */
const resistorSchema = z.strictObject({
  ...base,
  kind: z.literal("resistor"),
  ohms,
  /** How it is drawn; default a plain resistor. */
  form: z.enum(["resistor", "heater", "horn", "solenoid", "terminator"]).optional(),
});

/**
 * Electromagnetic relay, terminals by DIN 72552: coil `86` (plus) and `85`, contact `30`, `87` and, when a change-over,
 * `87a`. A starter solenoid is one with other names. It pulls in by its coil's current (a hot coil needs more volts) and
 * keeps its place between drop-out and pull-in.
 */
const relaySchema = z.strictObject({
  ...base,
  kind: z.literal("relay"),
  contact: z.enum(["make", "changeOver"]),
  coilOhms: ohms, // at 20 °C
  pullInVolts: z.number().positive(),
  dropOutVolts: z.number().positive(),
  contactOhms: ohms,
  /** Across the coil; a diode has its cathode at 86. */
  suppressor: z.enum(["none", "resistor", "diode"]).optional(),
  suppressorOhms: ohms.optional(), // of the resistor; default 680
  /** Other terminal names than those of DIN 72552. */
  terminals: z
    .strictObject({
      coilPlus: terminalNameSchema,
      coilMinus: terminalNameSchema,
      common: terminalNameSchema,
      make: terminalNameSchema,
      break: terminalNameSchema.optional(),
    })
    .optional(),
});

/** Terminals `1` and `2`. */
const lampSchema = z.strictObject({
  ...base,
  kind: z.literal("lamp"),
  ratedVolts: z.number().positive(),
  ratedWatts: z.number().positive(),
});

/** Two filaments on one cap: brake and tail, dipped and main beam. Both end at `common`. */
const twoFilamentLampSchema = z.strictObject({
  ...base,
  kind: z.literal("twoFilamentLamp"),
  terminals: z.strictObject({
    common: terminalNameSchema,
    first: terminalNameSchema,
    second: terminalNameSchema,
  }),
  ratedVolts: z.number().positive(),
  firstWatts: z.number().positive(),
  secondWatts: z.number().positive(),
});

/** Terminals `1` (anode side) and `2`. A string of light-emitting diodes with its series resistor. */
const ledLampSchema = z.strictObject({
  ...base,
  kind: z.literal("ledLamp"),
  forwardVolts: z.number().positive(), // of the whole string at the rated current
  ratedVolts: z.number().positive(),
  ratedAmps: z.number().positive(),
});

/** Terminals `1` (anode) and `2` (cathode). */
const diodeSchema = z.strictObject({
  ...base,
  kind: z.literal("diode"),
  breakdownVolts: z.number().positive().optional(),
});

/**
 * Terminals `1` and `2`. Brushed motor with copper's temperature law. Without `turning` it is held against its load: no
 * back-EMF. With it the rotor turns at the speed where its torque meets friction and load.
 */
const motorSchema = z.strictObject({
  ...base,
  kind: z.literal("motor"),
  windingOhmsAt20: ohms,
  torquePerAmp: z.number().positive(), // N·m/A, and back-EMF in V·s/rad
  /** Two-node heat; without it the winding stays at ambient temperature. */
  heat: z
    .strictObject({
      windingToHousing: z.number().positive(), // K/W
      housingToAmbient: z.number().positive(), // K/W
      windingCapacity: z.number().positive(), // J/K
      housingCapacity: z.number().positive(), // J/K
      ambientCondition: camelNameSchema,
    })
    .optional(),
  turning: z
    .strictObject({
      frictionTorque: z.number().positive(), // N·m, dry friction of brushes and bearings
      /** Load whatever the speed, N·m; may follow conditions (a window at its end stop, a cold engine). */
      loadTorque: expressionSchema.optional(),
      loadPerSpeed: z.number().nonnegative().optional(), // N·m·s/rad
      loadPerSpeedSquared: z.number().nonnegative().optional(), // N·m·s²/rad²: fans and pumps
      /** While this is above 0.5 the rotor is held (a window at its end stop). */
      held: expressionSchema.optional(),
    })
    .optional(),
  /** Gear behind a coupling that can break: torque at its output is torquePerAmp · A · ratio · efficiency. */
  gear: z.strictObject({ ratio: z.number().positive(), efficiency: z.number().positive().max(1) }).optional(),
});

/**
 * Dual mirrored torque sensor, four terminals. Both outputs are ratiometric to the sensor's own supply and rest at
 * mid-scale; output 1 rises with effort to the right, output 2 mirrors it. Each is a divider between supply and ground,
 * so that an open supply pulls the outputs low and an open ground pulls them high.
 */
const torqueSensorSchema = z.strictObject({
  ...base,
  kind: z.literal("torqueSensor"),
  terminals: z.strictObject({
    supply: terminalNameSchema,
    ground: terminalNameSchema,
    signal1: terminalNameSchema,
    signal2: terminalNameSchema,
  }),
  effort: expressionSchema, // N·m through the torsion bar, positive to the right
  stiffness: z.number().positive(), // N·m per degree of torsion-bar twist
  maximumTwist: z.number().positive(), // degrees at the mechanical stop
  spanPerDegree: z.number().positive(), // fraction of the supply per degree of twist
  trackOhms: ohms,
  outputOhms: ohms,
  /** Supply current besides the two tracks, A. */
  supplyAmps: z.number().nonnegative(),
});

/** Terminals `1` and `2`. Negative-temperature-coefficient resistor given by a table of °C and Ω (interpolated in ln R over 1/T). */
const thermistorSchema = z.strictObject({
  ...base,
  kind: z.literal("thermistor"),
  temperature: expressionSchema,
  table: z.array(z.tuple([z.number(), z.number().positive()])).min(2),
});

/**
 * Potentiometer with one or more tracks moved together: pedal, throttle, level. Each track's wiper stands at `atRest` of
 * its supply at position 0 and at `atFull` at position 1 (ratiometric). Tracks may share supply and ground terminals.
 */
const positionSensorSchema = z.strictObject({
  ...base,
  kind: z.literal("positionSensor"),
  position: expressionSchema, // 0 to 1
  tracks: z
    .array(
      z.strictObject({
        supply: terminalNameSchema,
        ground: terminalNameSchema,
        signal: terminalNameSchema,
        atRest: z.number().min(0).max(1),
        atFull: z.number().min(0).max(1),
        trackOhms: ohms,
        outputOhms: ohms,
      }),
    )
    .min(1),
});

/** Terminals `1` (supply) and `2` (signal). Two-wire sensor that draws one of two currents, changing at `hertz`. */
const activeSpeedSensorSchema = z.strictObject({
  ...base,
  kind: z.literal("activeSpeedSensor"),
  lowAmps: z.number().positive(),
  highAmps: z.number().positive(),
  /** Below this supply it draws nothing. */
  minimumVolts: z.number().positive(),
  hertz: expressionSchema,
});

/** Terminals `1` and `2`. Coil at a toothed ring: an alternating voltage that grows with its frequency. */
const passiveSpeedSensorSchema = z.strictObject({
  ...base,
  kind: z.literal("passiveSpeedSensor"),
  coilOhms: ohms,
  peakVoltsPerHertz: z.number().positive(),
  hertz: expressionSchema,
});

/**
 * A kind that is missing, put together from simple parts between its terminals and inner nodes. Expressions see
 * conditions only.
 */
const composedSchema = z.strictObject({
  ...base,
  kind: z.literal("composed"),
  terminals: z.array(terminalNameSchema).min(2),
  innerNodes: z.array(camelNameSchema).optional(),
  parts: z
    .array(
      z.discriminatedUnion("kind", [
        z.strictObject({
          kind: z.literal("resistor"),
          name: camelNameSchema,
          between: z.tuple([z.string(), z.string()]),
          ohms: expressionSchema,
        }),
        /** Points of its current-voltage curve, [V, A], from first to second node. */
        z.strictObject({
          kind: z.literal("curve"),
          name: camelNameSchema,
          between: z.tuple([z.string(), z.string()]),
          points: z.array(z.tuple([z.number(), z.number()])).min(2),
        }),
        z.strictObject({
          kind: z.literal("switch"),
          name: camelNameSchema,
          between: z.tuple([z.string(), z.string()]),
          closed: expressionSchema,
          contactOhms: ohms,
        }),
        z.strictObject({
          kind: z.literal("diode"),
          name: camelNameSchema,
          between: z.tuple([z.string(), z.string()]), // anode, cathode
          breakdownVolts: z.number().positive().optional(),
        }),
        z.strictObject({
          kind: z.literal("source"),
          name: camelNameSchema,
          between: z.tuple([z.string(), z.string()]), // plus, minus
          volts: expressionSchema,
          ohms,
        }),
        /** A contact closed while the voltage over `senses` is above (or, `closesBelow`, below) its threshold. */
        z.strictObject({
          kind: z.literal("threshold"),
          name: camelNameSchema,
          between: z.tuple([z.string(), z.string()]),
          senses: z.tuple([z.string(), z.string()]),
          thresholdVolts: z.number(),
          hysteresisVolts: z.number().positive(),
          closesBelow: z.boolean().optional(),
          contactOhms: ohms,
        }),
      ]),
    )
    .min(1),
});

/** Only terminals: a diagnostic socket (SAE J1962), a joint box, a capped option connector. */
const passiveSchema = z.strictObject({
  ...base,
  kind: z.literal("passive"),
  terminals: z.array(terminalNameSchema).min(1),
  /** Marks the diagnostic socket and says which terminals a scan tool uses. */
  diagnosticSocket: z
    .strictObject({
      supply: terminalNameSchema,
      ground: terminalNameSchema,
      canHigh: terminalNameSchema,
      canLow: terminalNameSchema,
    })
    .optional(),
});

export const componentSchema = z.discriminatedUnion("kind", [
  batterySchema,
  chargingSourceSchema,
  fuseSchema,
  switchSchema,
  relaySchema,
  resistorSchema,
  lampSchema,
  twoFilamentLampSchema,
  ledLampSchema,
  diodeSchema,
  motorSchema,
  torqueSensorSchema,
  positionSensorSchema,
  activeSpeedSensorSchema,
  passiveSpeedSensorSchema,
  thermistorSchema,
  composedSchema,
  passiveSchema,
  moduleSchema,
]);
export type Component = z.infer<typeof componentSchema>;
export type ComponentOf<K extends Component["kind"]> = Extract<Component, { kind: K }>;
export const componentKinds = componentSchema.options.map((option) => option.shape.kind.value);
