const kelvin = 273.15;

/**
 * Resistance of a thermistor given by a table of °C and Ω: ln R is linear in 1/T between two neighbouring points
 * (a local beta law); beyond the table the outermost pair's law goes on.
 */
export function thermistorOhms(table: readonly (readonly [number, number])[], celsius: number): number {
  const points = [...table].sort((left, right) => left[0] - right[0]);
  const found = points.findIndex(([temperature]) => temperature >= celsius);
  const upper = Math.min(points.length - 1, Math.max(1, found === -1 ? points.length - 1 : found));
  const [t1, r1] = points[upper - 1] ?? [0, 1];
  const [t2, r2] = points[upper] ?? [1, 1];
  if (t1 === t2) return r1;
  const inverse = 1 / Math.max(1, celsius + kelvin);
  const share = (inverse - 1 / (t1 + kelvin)) / (1 / (t2 + kelvin) - 1 / (t1 + kelvin));
  return r1 * (r2 / r1) ** share;
}
