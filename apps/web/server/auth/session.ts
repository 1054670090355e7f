import "server-only";
import { cookies } from "next/headers";
import { decode } from "next-auth/jwt";
import { cache } from "react";
import { env } from "@/env";
import { findAccountForSession } from "./accounts";
import { sessionCookieName } from "./next-auth-options";
import { parseSessionToken, type SessionToken, sessionStillHolds } from "./session-token";
import type { SessionUser } from "./session-user";

/** Who is asking, checked against the database; once per request, however often it is called. */
export const currentUser = cache(async (): Promise<SessionUser | undefined> => {
  const cookie = (await cookies()).get(sessionCookieName());
  const token = cookie === undefined ? undefined : await readToken(cookie.value);
  if (token === undefined) return undefined;
  const account = await findAccountForSession(token);
  if (!sessionStillHolds(token, account)) return undefined;
  const { userId, organisationId, role, name, email } = account;
  return { userId, organisationId, role, name, email };
});

async function readToken(cookie: string): Promise<SessionToken | undefined> {
  try {
    return parseSessionToken(await decode({ token: cookie, secret: env().NEXTAUTH_SECRET }));
  } catch {
    // An expired cookie, or one that was never ours: both are simply nobody.
    return undefined;
  }
}
