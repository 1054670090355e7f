import { z } from "zod";

const ohms = z.number().positive();
const at = z.string().min(1);

/**
 * A fault is a transformation of the vehicle. Places are written as
 * `W12` a conductor · `X2.5` the contact of a cavity · `XE1` the bolted contact of a ground point ·
 * `A1:T1` a component terminal (inside the component) · any test point id for shorts.
 */
export const faultSchema = z.discriminatedUnion("kind", [
  z.strictObject({ kind: z.literal("open"), at }),
  z.strictObject({ kind: z.literal("seriesResistance"), at, ohms }),
  z.strictObject({ kind: z.literal("shortToGround"), at, ohms }),
  /** `supply` is the test point of the conductor it has chafed against. */
  z.strictObject({ kind: z.literal("shortToSupply"), at, supply: at, ohms }),
  z.strictObject({ kind: z.literal("shortBetween"), at, other: at, ohms }),
  /** The fuse has opened for no lasting reason: a new one holds. */
  z.strictObject({ kind: z.literal("fuseBlown"), component: at }),
  /** `channel` is the terminal name of the sensor output. */
  z.strictObject({ kind: z.literal("sensorOffset"), component: at, channel: z.string(), volts: z.number() }),
  z.strictObject({ kind: z.literal("sensorStuck"), component: at, channel: z.string(), volts: z.number() }),
  z.strictObject({ kind: z.literal("internalOpen"), component: at, terminal: z.string() }),
  /** Not a defect: the winding is at this temperature when the job starts. */
  z.strictObject({ kind: z.literal("motorHot"), component: at, celsius: z.number() }),
  z.strictObject({
    kind: z.literal("weakBattery"),
    component: at,
    stateOfCharge: z.number().min(0).max(1),
    internalOhmsFactor: z.number().min(1),
  }),
  /** Resistance (or an open, 1e9 Ω) that is there only in one condition: a choice at `is`, or a number above or below. */
  z.strictObject({
    kind: z.literal("intermittent"),
    at,
    ohms,
    condition: z.string(),
    is: z.string().optional(),
    above: z.number().optional(),
    below: z.number().optional(),
  }),
  /** Conductance where there should be none: dirt, damp insulation. */
  z.strictObject({ kind: z.literal("leak"), at, other: at, ohms }),
  /** Insulation worn through to the body somewhere along a conductor; `along` is the part of its length from `from`. */
  z.strictObject({ kind: z.literal("chafed"), conductor: at, along: z.number().min(0).max(1), ohms }),
  /** The terminal has slipped back in its cavity: no contact, though the plug is home. */
  z.strictObject({ kind: z.literal("backedOut"), at }),
  /** The socket grips no more: resistance at the contact. */
  z.strictObject({ kind: z.literal("spreadTerminal"), at, ohms }),
  /** Resistance at every contact of a connector. */
  z.strictObject({ kind: z.literal("corroded"), connector: at, ohms }),
  /** Water: neighbouring cavities joined, each pair through so many ohms. */
  z.strictObject({ kind: z.literal("wetConnector"), connector: at, ohms }),
  /** Two conductors in each other's cavity on the harness side. */
  z.strictObject({
    kind: z.literal("crossedCavities"),
    connector: at,
    first: z.string(),
    second: z.string(),
  }),
  z.strictObject({ kind: z.literal("fuseMissing"), component: at }),
  z.strictObject({ kind: z.literal("fuseWrongRating"), component: at, ratingAmps: z.number().positive() }),
  z.strictObject({ kind: z.literal("coilOpen"), component: at }),
  z.strictObject({ kind: z.literal("contactWelded"), component: at }),
  z.strictObject({ kind: z.literal("contactResistive"), component: at, ohms }),
  /** A relay whose diode is the wrong way round: it shorts the coil's feed. */
  z.strictObject({ kind: z.literal("diodeReversed"), component: at }),
  /** A filament has parted; `filament` of a two-filament lamp. */
  z.strictObject({
    kind: z.literal("lampOpen"),
    component: at,
    filament: z.enum(["first", "second"]).optional(),
  }),
  /** The two filaments touch inside the bulb. */
  z.strictObject({ kind: z.literal("crossFilament"), component: at, ohms }),
  z.strictObject({ kind: z.literal("wrongBulb"), component: at, watts: z.number().positive() }),
  /** A sensor that reads as if it were so many units (°C, share of its travel) away from the truth. */
  z.strictObject({ kind: z.literal("sensorShift"), component: at, by: z.number() }),
  /** Two terminals joined inside a component: a sensor that pulls its supply down, a shorted winding. */
  z.strictObject({
    kind: z.literal("internalShort"),
    component: at,
    terminal: z.string(),
    other: z.string(),
    ohms,
  }),
  /** Worn brushes or a worn commutator: resistance in the motor. */
  z.strictObject({ kind: z.literal("motorWorn"), component: at, ohms }),
  z.strictObject({ kind: z.literal("motorSeized"), component: at }),
  /** Shorted turns: the winding has this part of its resistance and turns left, 0 to 1. */
  z.strictObject({ kind: z.literal("motorShorted"), component: at, share: z.number().gt(0).max(1) }),
  z.strictObject({ kind: z.literal("couplingBroken"), component: at }),
  z.strictObject({ kind: z.literal("driverDead"), component: at, output: z.string() }),
  z.strictObject({ kind: z.literal("driverLeaking"), component: at, output: z.string(), ohms }),
  /** A scan value shown so much off; the module works with the true one. */
  z.strictObject({ kind: z.literal("scanValueWrong"), component: at, value: z.string(), by: z.number() }),
  /** A scan value that always shows this. */
  z.strictObject({ kind: z.literal("scanValueStuck"), component: at, value: z.string(), shows: z.number() }),
  /** A module's built-in bus terminator, or a resistor used as one, is missing or has another resistance. */
  z.strictObject({ kind: z.literal("terminatorMissing"), component: at }),
  z.strictObject({ kind: z.literal("terminatorDrifted"), component: at, ohms }),
  /** A further terminator between two points of the bus. */
  z.strictObject({ kind: z.literal("terminatorExtra"), at, other: at, ohms }),
  /** The module works but neither talks on its buses nor listens. */
  z.strictObject({ kind: z.literal("silentNode"), component: at }),
  /** The module does not fall asleep. */
  z.strictObject({ kind: z.literal("staysAwake"), component: at }),
  /** One rectifier diode of the alternator is open: less output, ripple. */
  z.strictObject({ kind: z.literal("alternatorDiodeOpen"), component: at }),
  /** The belt turns the machine at this part of its speed; 0 is a missing belt. */
  z.strictObject({ kind: z.literal("beltSlips"), component: at, share: z.number().min(0).max(1) }),
  /** The regulator holds this much more or less. */
  z.strictObject({ kind: z.literal("regulatorOff"), component: at, volts: z.number() }),
  /** Something the owner has added between two points. */
  z.strictObject({ kind: z.literal("accessory"), at, other: at, watts: z.number().positive() }),
]);
export type Fault = z.infer<typeof faultSchema>;
export const faultKinds = faultSchema.options.map((option) => option.shape.kind.value);
