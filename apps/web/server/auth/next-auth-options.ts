import "server-only";
import type { AuthOptions } from "next-auth";
import CredentialsProvider from "next-auth/providers/credentials";
import type { OAuthConfig } from "next-auth/providers/oauth";
import { z } from "zod";
import { env } from "@/env";
import { remoteAddress } from "../http/remote-address";
import { logger } from "../logger";
import { type Account, findAccountByEmail, findAccountForSession } from "./accounts";
import { signInWithPassword } from "./password-sign-in";
import { safeReturnPath } from "./safe-return-path";
import { parseSessionToken, type SessionToken, sessionStillHolds, toSessionToken } from "./session-token";

declare module "next-auth" {
  interface User {
    /** Set by our own password check; a person from the identity provider is looked up afterwards. */
    session?: SessionToken;
  }
}

/** A working day: nobody is signed out in the middle of an assessment, and a forgotten tablet is locked by morning. */
export const sessionSeconds = 12 * 60 * 60;

export const usesSecureCookies = (): boolean => env().NEXTAUTH_URL?.startsWith("https://") ?? false;

export const sessionCookieName = (): string =>
  `${usesSecureCookies() ? "__Secure-" : ""}next-auth.session-token`;

const profileSchema = z.object({
  sub: z.string().min(1),
  email: z.email().transform((email) => email.toLowerCase()),
  email_verified: z.boolean().optional(),
  name: z.string().optional(),
});

function openIdConnect(): OAuthConfig<unknown>[] {
  const { OIDC_ISSUER, OIDC_CLIENT_ID, OIDC_CLIENT_SECRET, OIDC_NAME } = env();
  if (OIDC_ISSUER === undefined || OIDC_CLIENT_ID === undefined || OIDC_CLIENT_SECRET === undefined)
    return [];
  return [
    {
      id: "oidc",
      name: OIDC_NAME ?? "your organisation's account",
      type: "oauth",
      wellKnown: `${OIDC_ISSUER.replace(/\/$/, "")}/.well-known/openid-configuration`,
      issuer: OIDC_ISSUER,
      clientId: OIDC_CLIENT_ID,
      clientSecret: OIDC_CLIENT_SECRET,
      authorization: { params: { scope: "openid email profile" } },
      idToken: true,
      checks: ["pkce", "state", "nonce"],
      profile: (raw) => {
        const profile = profileSchema.parse(raw);
        return { id: profile.sub, email: profile.email, name: profile.name ?? profile.email };
      },
    },
  ];
}

/** The account behind a finished OpenID Connect sign-in: one that an administrator made, with a verified address. */
async function accountOfProfile(profile: unknown): Promise<Account | undefined> {
  const parsed = profileSchema.safeParse(profile);
  if (!parsed.success || parsed.data.email_verified === false) return undefined;
  const account = (await findAccountByEmail(parsed.data.email))?.account;
  return account?.disabled === false ? account : undefined;
}

export function nextAuthOptions(): AuthOptions {
  return {
    secret: env().NEXTAUTH_SECRET,
    useSecureCookies: usesSecureCookies(),
    session: { strategy: "jwt", maxAge: sessionSeconds },
    pages: { signIn: "/sign-in", signOut: "/sign-out", error: "/sign-in" },
    providers: [
      CredentialsProvider({
        credentials: { email: { type: "email" }, password: { type: "password" } },
        authorize: async (credentials, request) => {
          const address = remoteAddress(new Headers(request.headers as Record<string, string>));
          const result = await signInWithPassword(credentials ?? {}, address);
          // next-auth puts the message of an error into the sign-in page's address as ?error=…
          if (!result.ok) throw new Error(result.error.code);
          const { userId, name, email } = result.value;
          return { id: userId, name, email, session: toSessionToken(result.value) };
        },
      }),
      ...openIdConnect(),
    ],
    callbacks: {
      signIn: async ({ account, profile }) =>
        account?.provider !== "oidc" || (await accountOfProfile(profile)) !== undefined,
      jwt: async ({ token, user, account, profile }) => {
        if (account !== null && account !== undefined) {
          if (account.provider !== "oidc" && user.session !== undefined) return { ...user.session };
          const person = await accountOfProfile(profile);
          if (person === undefined) throw new Error("The account vanished while its owner was signing in.");
          return { ...toSessionToken(person) };
        }
        const session = parseSessionToken(token);
        const person = session === undefined ? undefined : await findAccountForSession(session);
        if (session === undefined || !sessionStillHolds(session, person)) {
          throw new Error("This session has been ended.");
        }
        return { ...session };
      },
      // We read the cookie ourselves (session.ts); next-auth's own session address tells nothing but its expiry.
      session: ({ session }) => ({ expires: session.expires }),
      redirect: ({ url, baseUrl }) => {
        const path = url.startsWith(`${baseUrl}/`) ? url.slice(baseUrl.length) : url;
        return baseUrl + safeReturnPath(path);
      },
    },
    logger: {
      error: (code, metadata) => logger().error({ code, error: metadata }, "sign-in failed"),
      warn: (code) => logger().debug({ code }, "sign-in warning"),
      debug: () => {},
    },
  };
}
