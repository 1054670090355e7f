import { z } from "zod";
import { expressionSchema } from "./expression";
import { camelNameSchema, designatorSchema, terminalNameSchema } from "./names";
import { zoneSchema } from "./zone";

const ohms = z.number().positive();

/** SAE J2012 form: a letter (P, C, B, U), a digit 0 to 3, three hexadecimal digits, optionally a failure-type byte. */
export const faultCodeSchema = z
  .string()
  .regex(/^[PCBU][0-3][0-9A-F]{3}(-[0-9A-F]{2})?$/, "a fault code looks like C1511 or U0131-87");

/** A sampled-data control module: it reads its terminals against its own ground, runs its law, drives its terminals. */
export const moduleSchema = z.strictObject({
  kind: z.literal("module"),
  id: designatorSchema,
  title: z.string().min(1),
  place: z.string().optional(),
  zone: zoneSchema.optional(),
  terminals: z.array(z.strictObject({ name: terminalNameSchema, function: z.string().min(1) })).min(2),
  /** The terminal all its measurements refer to, and the resistance of its internal ground path. */
  ground: terminalNameSchema,
  internalGroundOhms: ohms,
  /** Further ground terminals joined internally to `ground` (power ground beside signal ground). */
  groundLinks: z.array(z.strictObject({ terminal: terminalNameSchema, ohms })).optional(),
  /** Terminals joined inside: a bus that passes through, a feed handed on. */
  internalLinks: z
    .array(z.strictObject({ from: terminalNameSchema, to: terminalNameSchema, ohms }))
    .optional(),
  supply: z.strictObject({
    terminal: terminalNameSchema,
    wakeVolts: z.number().positive(), // switches on at or above
    dropoutVolts: z.number().positive(), // switches off below
    quiescentAmps: z.number().nonnegative(), // while off
    runningAmps: z.number().nonnegative(), // while on
    /**
     * Falls asleep after `stayAwake` has been untrue for so long, and wakes the moment it is true: outputs and sensor
     * supplies off, silent on the bus, drawing `asleepAmps`. A module that loses its supply wakes when it returns.
     */
    sleep: z
      .strictObject({
        afterSeconds: z.number().positive(),
        asleepAmps: z.number().nonnegative(),
        stayAwake: expressionSchema,
      })
      .optional(),
  }),
  inputs: z
    .array(
      z.strictObject({
        terminal: terminalNameSchema,
        /** Bias resistor inside the module; to its ground, its logic supply or one of its rails. */
        pull: z.strictObject({
          to: z.union([z.enum(["ground", "supply"]), z.strictObject({ rail: camelNameSchema })]),
          ohms,
        }),
        /** Counts pulses: a swing of at least so many volts at the terminal against the module's ground is a pulse. */
        pulseSwingVolts: z.number().positive().optional(),
        /** The other terminal of a floating sensor; the swing is then measured between both. */
        pulseAgainst: terminalNameSchema.optional(),
      }),
    )
    .optional(),
  /** Current-limited sensor supplies, fed from the logic supply. */
  rails: z
    .array(
      z.strictObject({
        name: camelNameSchema,
        terminal: terminalNameSchema,
        volts: z.number().positive(),
        limitAmps: z.number().positive(),
      }),
    )
    .optional(),
  bus: z
    .strictObject({
      canHigh: terminalNameSchema,
      canLow: terminalNameSchema,
      terminationOhms: ohms.optional(),
      /** Share of time this node drives the bus dominant while it talks, 0 to 1. */
      dominantShare: z.number().min(0).max(0.5),
      sends: z.array(z.strictObject({ message: camelNameSchema, value: expressionSchema })),
      receives: z.array(
        z.strictObject({ message: camelNameSchema, from: designatorSchema, substitute: z.number() }),
      ),
    })
    .optional(),
  /** One-wire bus (LIN, ISO 17987): the master pulls up through 1 kΩ and a diode, a slave through 30 kΩ. */
  lin: z
    .strictObject({
      terminal: terminalNameSchema,
      role: z.enum(["master", "slave"]),
      /** Share of time this node holds the wire dominant while it talks, 0 to 0.5. */
      dominantShare: z.number().min(0).max(0.5),
      sends: z.array(z.strictObject({ message: camelNameSchema, value: expressionSchema })),
      receives: z.array(
        z.strictObject({ message: camelNameSchema, from: designatorSchema, substitute: z.number() }),
      ),
    })
    .optional(),
  /** Temperatures the module computes for itself: first-order, driven by a loss, °C. */
  thermalEstimates: z
    .array(
      z.strictObject({
        name: camelNameSchema,
        watts: expressionSchema,
        ambient: expressionSchema,
        thermalOhms: z.number().positive(), // K/W
        seconds: z.number().positive(), // time constant
        /** This estimate follows the real winding of that motor (used to start from a hot motor). */
        motor: designatorSchema.optional(),
      }),
    )
    .optional(),
  /** The control law: evaluated in this order every sample. */
  signals: z.array(z.strictObject({ name: camelNameSchema, value: expressionSchema })),
  outputs: z
    .array(
      z.discriminatedUnion("kind", [
        /** Full bridge that regulates its load current towards a signed target; power comes in at `feed`, leaves at `return`. */
        z.strictObject({
          kind: z.literal("bridge"),
          name: camelNameSchema,
          plus: terminalNameSchema,
          minus: terminalNameSchema,
          feed: terminalNameSchema,
          return: terminalNameSchema,
          targetAmps: expressionSchema,
          bridgeOhms: ohms,
          minimumFeedVolts: z.number().positive(),
        }),
        z.strictObject({
          kind: z.enum(["lowSide", "highSide"]),
          name: camelNameSchema,
          terminal: terminalNameSchema,
          on: expressionSchema,
          onOhms: ohms,
          /** The terminal a high side takes its current from, or a low side gives it to; default supply and ground. */
          through: terminalNameSchema.optional(),
          /** Protects itself: switches off above this current, A. */
          limitAmps: z.number().positive().optional(),
        }),
        /** Pulse-width modulated half bridge with a freewheel, by its mean: minus stands at `return`, plus at duty · feed. */
        z.strictObject({
          kind: z.literal("chopper"),
          name: camelNameSchema,
          plus: terminalNameSchema,
          minus: terminalNameSchema,
          feed: terminalNameSchema,
          return: terminalNameSchema,
          duty: expressionSchema, // 0 to 1
          hertz: z.number().positive(),
          onOhms: ohms,
        }),
        /** Low-side transistor that leaves so many volts between `feed` and its terminal, for the load between them. */
        z.strictObject({
          kind: z.literal("linear"),
          name: camelNameSchema,
          terminal: terminalNameSchema,
          feed: terminalNameSchema,
          loadVolts: expressionSchema,
          onOhms: ohms,
        }),
      ]),
    )
    .optional(),
  monitors: z
    .array(
      z.strictObject({
        code: faultCodeSchema,
        text: z.string().min(1),
        /** What usually sets it, for the code table. */
        causes: z.array(z.string()).optional(),
        enable: expressionSchema.optional(),
        fails: expressionSchema,
        matureSeconds: z.number().nonnegative(),
        /** Stays failed until the key has been off (`keyCycle`) or clears as soon as the condition passes (`live`). */
        hold: z.enum(["live", "keyCycle"]),
        warningLamp: z.boolean(),
      }),
    )
    .optional(),
  /** What a scan tool can read. */
  scanValues: z
    .array(
      z.strictObject({
        name: camelNameSchema,
        title: z.string().min(1),
        unit: z.string(),
        decimals: z.number().int().min(0).max(4),
        value: expressionSchema,
      }),
    )
    .optional(),
});
export type ControlModule = z.infer<typeof moduleSchema>;
