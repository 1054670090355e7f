import { Prisma } from "./generated/client";

/** JSON columns are `unknown` at this package's border: callers validated the value with their own schema. */
export function toJson(value: unknown): Prisma.InputJsonValue | typeof Prisma.JsonNull {
  if (value === undefined) throw new TypeError("undefined is not a JSON value");
  return value === null ? Prisma.JsonNull : (value as Prisma.InputJsonValue);
}

/** For optional columns: null means "no value" (SQL NULL). */
export function toOptionalJson(value: unknown): Prisma.InputJsonValue | typeof Prisma.DbNull {
  return value === null || value === undefined ? Prisma.DbNull : (value as Prisma.InputJsonValue);
}
