import "server-only";
import { headers } from "next/headers";
import { notFound, redirect } from "next/navigation";
import { safeReturnPath } from "./safe-return-path";
import { currentUser } from "./session";
import type { Role, SessionUser } from "./session-user";

/**
 * For pages. Nobody signed in: goes to the sign-in page and comes back here afterwards. Signed in with a role that has
 * no business on this page: the same "nothing here" as an unknown address.
 */
export async function requireUser(allowed?: readonly Role[]): Promise<SessionUser> {
  const user = await currentUser();
  if (user === undefined) {
    const path = safeReturnPath((await headers()).get("x-requested-path"));
    redirect(path === "/" ? "/sign-in" : `/sign-in?callbackUrl=${encodeURIComponent(path)}`);
  }
  if (allowed !== undefined && !allowed.includes(user.role)) notFound();
  return user;
}
