/** What a changeable field may hold. */
export type Rule = { readonly test: (value: unknown) => boolean; readonly says: string };

const number = (test: (value: number) => boolean, says: string): Rule => ({
  test: (value) => typeof value === "number" && test(value),
  says,
});

export const finite = number(Number.isFinite, "a finite number");
export const positive = number((x) => Number.isFinite(x) && x > 0, "a finite number above 0");
export const notNegative = number((x) => Number.isFinite(x) && x >= 0, "a finite number, 0 or more");
export const fraction = number((x) => x > 0 && x < 1, "a number between 0 and 1, both excluded");
export const share = number((x) => x >= 0 && x <= 1, "a number from 0 to 1");
export const celsius = number((x) => Number.isFinite(x) && x > -273.15, "a finite temperature above −273.15");
export const flag: Rule = { test: (value) => typeof value === "boolean", says: "true or false" };
