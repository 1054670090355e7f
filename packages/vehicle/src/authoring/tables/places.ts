import { conductorEndSchema, designatorSchema } from "../../document/names";
import { err, ok, type Result } from "../../result";

/** Words people put between a designator and what follows it. */
const between = /^(pin|cavity|cav|way|terminal|term|contact|position|pos|no)\b\.?\s*/i;

/** `x12 ` → `X12`; a small letter at the end stays. */
export const toDesignator = (text: string): string =>
  text.trim().replace(/^[a-z]+/i, (letters) => letters.toUpperCase());

export const isDesignator = (text: string): boolean => designatorSchema.safeParse(text).success;

const howTo =
  "write X12.3 for cavity 3 of X12, X7.2/b for the second face of an in-line connector, XS1 for a splice, XE1 for a ground point, G1:+ for a terminal";

/**
 * A conductor's end in the document's own form: `X12.3`, `X12/3`, `X12-3`, `X12 pin 3` and, with a column for it, `X12` and `3`
 * all become `X12.3`; `F1/2` and `G1 +` become `F1:2` and `G1:+`; `splice 4` and `ground 2` become `XS4` and `XE2`. What
 * begins with X and has a cavity is a connector; with a colon it is one when `isConnector` says so, else a component such as
 * a socket with studs.
 */
export function parseEnd(
  text: string,
  pin = "",
  isConnector: (id: string) => boolean = () => true,
): Result<string, string> {
  const whole = pin === "" ? text.trim() : `${text.trim()} ${pin.trim()}`;
  if (whole === "") return err(`the end is missing; ${howTo}`);
  const joint = /^(splice|sp|ground|gnd|earth|chassis|body)\.?\s*(\d*)$/i.exec(whole);
  if (joint) {
    const isSplice = /^sp/i.test(joint[1] ?? "");
    return ok(`${isSplice ? "XS" : "XE"}${joint[2] || "1"}`);
  }
  const found = /^([A-Za-z]{1,3}[0-9]{1,4}[a-z]?)(?:\s*[.:/-]\s*|\s+|$)(.*)$/.exec(whole);
  const owner = toDesignator(found?.[1] ?? "");
  const rest = (found?.[2] ?? "").replace(between, "").trim();
  const end =
    rest === ""
      ? owner
      : owner.startsWith("X") && (!whole.includes(":") || isConnector(owner))
        ? `${owner}.${rest.replace(/^([A-Za-z0-9]+)\s*[/\s]?\s*([bB])?$/, cavity)}`
        : `${owner}:${rest}`;
  // A lone designator must be a splice or a ground point.
  return conductorEndSchema.safeParse(end).success && !(rest === "" && !owner.startsWith("X"))
    ? ok(end)
    : err(`"${whole}" is no end of a conductor; ${howTo}`);
}

const cavity = (all: string, name: string, face: string | undefined): string =>
  face !== undefined && /[/\s]/.test(all) ? `${name.toUpperCase()}/b` : all.toUpperCase();
