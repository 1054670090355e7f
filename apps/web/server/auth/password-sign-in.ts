import "server-only";
import { verifyPassword } from "@probeworthy/database";
import { z } from "zod";
import { findAccountByEmail } from "./accounts";
import { type AuthenticateResult, authenticate } from "./authenticate";
import { beginSignIn, noteSuccessfulSignIn } from "./sign-in-throttle";

/** Longer than any password manager makes, short enough that hashing it costs nothing special. */
const credentialsSchema = z.object({ email: z.string().max(320), password: z.string().min(1).max(512) });

export async function signInWithPassword(input: unknown, address: string): Promise<AuthenticateResult> {
  const credentials = credentialsSchema.safeParse(input);
  if (!credentials.success) return { ok: false, error: { code: "wrong_credentials" } };
  return authenticate(credentials.data, {
    findByEmail: findAccountByEmail,
    verifyPassword,
    beginTry: (email) => beginSignIn(email, address),
    noteSuccess: (email) => noteSuccessfulSignIn(email, address),
  });
}
