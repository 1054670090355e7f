import { toNumber } from "../../charts/chart-columns";
import { err, ok, type Result } from "../../result";

/**
 * Cross-section of a solid round conductor of a gauge number, mm²: the diameter is 0.127 mm · 92^((36 − n)/39) (ASTM B258).
 * 1/0 is n = 0, 2/0 is n = −1, and so on.
 */
export function awgSquareMillimetres(gauge: number): number {
  const diameter = 0.127 * 92 ** ((36 - gauge) / 39);
  return (Math.PI / 4) * diameter ** 2;
}

const threeFigures = (value: number): number => Number(value.toPrecision(3));

/** A cross-section in mm²: `0.75`, `0,75 mm²`, `AWG 18`, `18 AWG`, `#18`, `2/0 AWG`. A bare number is in `unit`. */
export function parseCrossSection(text: string, unit: "mm2" | "awg"): Result<number, string> {
  const says = /awg|ga(uge)?\b|#/i.test(text) ? "awg" : /mm|sq/i.test(text) ? "mm2" : unit;
  const bare = text.replace(/awg|gauge|ga\b|#|mm\s*(\^?2|²)?|sq\.?|qmm/gi, "").trim();
  if (says === "awg") {
    const zeros = /^([1-4])\/0$/.exec(bare);
    const gauge = zeros ? 1 - Number(zeros[1]) : /^0+$/.test(bare) ? 1 - bare.length : toNumber(bare);
    if (gauge === undefined || gauge < -3 || gauge > 40)
      return err(`"${text}" is no wire gauge; write AWG 18, or the cross-section in mm²`);
    return ok(threeFigures(awgSquareMillimetres(gauge)));
  }
  const value = toNumber(bare);
  if (value === undefined || value <= 0)
    return err(`"${text}" is no cross-section; write 0.75 for 0.75 mm², or AWG 18`);
  return value > 185 ? err(`${value} mm² is more than any cable of a car; is it another unit?`) : ok(value);
}

const metresIn: Readonly<Record<string, number>> = {
  m: 1,
  mm: 0.001,
  cm: 0.01,
  ft: 0.3048,
  in: 0.0254,
};
export type LengthUnit = keyof typeof metresIn;

/** A length in m: `1.2`, `1,2 m`, `1200 mm`, `4 ft`. A bare number is in `unit`. */
export function parseLength(text: string, unit: LengthUnit): Result<number, string> {
  const found = /^(.*?)\s*(mm|cm|m|ft|in|")?$/i.exec(text.trim());
  const value = toNumber(found?.[1] ?? "");
  const written = found?.[2] === '"' ? "in" : found?.[2]?.toLowerCase();
  const size = metresIn[written ?? unit];
  if (value === undefined || value <= 0 || size === undefined)
    return err(`"${text}" is no length; write 1.2 for 1.2 m, or 1200 mm`);
  return ok(Number((value * size).toPrecision(6)));
}
