/** Nine significant digits: what a stored state keeps, so that it reads back to the same number everywhere. */
export const roundStored = (value: number): number =>
  Number.isFinite(value) ? Number(value.toPrecision(9)) : 0;

/** Maps the values of a record. */
export const mapRecord = <T, U>(
  record: Readonly<Record<string, T>>,
  change: (value: T, key: string) => U,
): Record<string, U> =>
  Object.fromEntries(Object.entries(record).map(([key, value]) => [key, change(value, key)]));
