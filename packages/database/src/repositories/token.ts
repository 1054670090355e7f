import { createHash, randomBytes } from "node:crypto";

/** 256 random bits in an address-safe alphabet. */
export const createToken = (): string => randomBytes(32).toString("base64url");

/** A random token needs no slow hash: it cannot be guessed. */
export const hashToken = (token: string): string => createHash("sha256").update(token).digest("hex");
