import { hash, verify } from "@node-rs/argon2";

/** Argon2id (the library's default variant) with OWASP's second recommended setting: 19 MiB, 2 passes, 1 lane. */
const cost = { memoryCost: 19_456, timeCost: 2, parallelism: 1 };

export async function hashPassword(password: string): Promise<string> {
  return hash(password, cost);
}

/**
 * Compares against a stored hash. Without one (unknown person, no password yet) it does the same work on a
 * decoy and answers no, so that the time taken does not tell whether an address is known.
 */
export async function verifyPassword(password: string, passwordHash: string | null): Promise<boolean> {
  if (passwordHash !== null) return verify(passwordHash, password);
  decoy ??= hashPassword("nobody has this password");
  await verify(await decoy, password);
  return false;
}

let decoy: Promise<string> | undefined;
