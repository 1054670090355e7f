import type { ComponentOf } from "../document/component";

export type FuseForm = ComponentOf<"fuse">["form"];

/**
 * Time–current points (multiple of the rating → seconds), chosen inside the published opening windows:
 * blades of type C and F: 135 % 0.75–600 s, 160 % 0.25–50 s, 200 % 0.15–5 s, 350 % 0.08–0.5 s, 600 % 0.03–0.1 s;
 * blades of type E: 135 % 60–1800 s, 200 % 2–50 s, 350 % 0.2–7 s, 600 % 0.04–1 s.
 * Sources: Littelfuse 287, 297, 257 and 299 data sheets as transcribed in public project notes; DIN 72581-3 extract,
 * http://noiasca.rothschopf.net/deutsch/dkabel_sicherung.htm . Every form holds 110 % for 100 h, so 110 % never opens it.
 * For bolted strips no window was found: the type E curve is assumed.
 */
const blade: readonly (readonly [number, number])[] = [
  [1.1, 400_000],
  [1.35, 60],
  [1.6, 6],
  [2, 1],
  [3.5, 0.2],
  [6, 0.06],
];
const large: readonly (readonly [number, number])[] = [
  [1.1, 400_000],
  [1.35, 330],
  [2, 10],
  [3.5, 1.2],
  [6, 0.2],
];
const curves: Readonly<Record<FuseForm, readonly (readonly [number, number])[]>> = {
  C: blade,
  F: blade,
  E: large,
  bolted: large,
};

/**
 * Opening time at a constant current, s; `Infinity` up to 110 % of the rating. Straight lines in log–log between the
 * points above; beyond 600 % the melting energy I²t is constant (adiabatic heating), a slope of −2.
 */
export function fuseOpeningSeconds(form: FuseForm, ratingAmps: number, amps: number): number {
  const multiple = Math.abs(amps) / ratingAmps;
  const curve = curves[form];
  const last = curve.at(-1) ?? [6, 0.1];
  if (multiple <= 1.1) return Number.POSITIVE_INFINITY;
  if (multiple >= last[0]) return last[1] * (last[0] / multiple) ** 2;
  const above = curve.findIndex(([point]) => point > multiple);
  const [x1, t1] = curve[above - 1] ?? last;
  const [x2, t2] = curve[above] ?? last;
  const share = Math.log(multiple / x1) / Math.log(x2 / x1);
  return t1 * (t2 / t1) ** share;
}

/** Part-melted fuse links cool back with this time constant, s. Common practice, no source. */
export const fuseCoolingSeconds = 20;
