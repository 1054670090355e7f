import { Prisma } from "./generated/client";

/** Prisma's code for a unique constraint that a write would break. */
export function isUniqueViolation(error: unknown): boolean {
  return error instanceof Prisma.PrismaClientKnownRequestError && error.code === "P2002";
}
