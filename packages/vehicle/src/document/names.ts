import { z } from "zod";

/**
 * Designators follow IEC 81346-2 letter codes: G source, F protection, S switch, M motor, B sensor,
 * A assembly (control module), E lamp or heater, X connector, splice or ground point, W conductor.
 */
export const designatorSchema = z
  .string()
  .regex(
    /^[A-Z]{1,3}[0-9]{1,4}[a-z]?$/,
    "a designator is capital letters and a number, such as A1, X12 or W104",
  );

/** A terminal of a component: a DIN 72552 number (`30`, `15`, `31`) or a short maker-style name. */
export const terminalNameSchema = z
  .string()
  .regex(/^[A-Za-z0-9+\-/]{1,8}$/, "a terminal name has one to eight letters, digits, +, - or /");

/** `A1:T1`, the terminal `T1` of the component `A1`. */
export const componentTerminalSchema = z
  .string()
  .regex(/^[A-Z]{1,3}[0-9]{1,4}[a-z]?:[A-Za-z0-9+\-/]{1,8}$/, "write a component terminal as A1:T1");

/**
 * Where a conductor may end:
 * `X2.5` harness face of cavity 5 of connector X2 · `X7.2/b` second wired face of an in-line connector ·
 * `XS1` a splice · `XE1` the ring terminal of a ground point · `G1:+` a bolted or soldered component terminal.
 */
export const conductorEndSchema = z
  .string()
  .regex(
    /^(X[A-Z]{0,2}[0-9]{1,4}\.[A-Z0-9]{1,3}(\/b)?|X[A-Z]{0,2}[0-9]{1,4}|[A-Z]{1,3}[0-9]{1,4}[a-z]?:[A-Za-z0-9+\-/]{1,8})$/,
    "a conductor ends at a cavity (X2.5), the second face of an in-line cavity (X7.2/b), a splice or ground point (XS1, XE1) or a component terminal (G1:+)",
  );

/** IEC 60757 codes in the order of that standard's table. */
export const colourCodes = [
  "BK",
  "BN",
  "RD",
  "OG",
  "YE",
  "GN",
  "BU",
  "VT",
  "GY",
  "WH",
  "PK",
  "GD",
  "TQ",
  "SR",
] as const;

/** One colour, or base colour and stripe in the vehicle trade's order: `RD`, `YEBK`. */
export const conductorColourSchema = z
  .string()
  .refine(
    (text) =>
      (text.length === 2 || text.length === 4) &&
      [text.slice(0, 2), ...(text.length === 4 ? [text.slice(2)] : [])].every((code) =>
        (colourCodes as readonly string[]).includes(code),
      ),
    "a colour is one or two IEC 60757 codes, such as RD or YEBK",
  );

export const camelNameSchema = z
  .string()
  .regex(/^[a-z][A-Za-z0-9]{0,39}$/, "a name starts with a small letter and has only letters and digits");
