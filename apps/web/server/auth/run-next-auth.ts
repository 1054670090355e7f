import "server-only";
import type { NextRequest } from "next/server";
import NextAuth from "next-auth";
import { nextAuthOptions } from "./next-auth-options";

export interface NextAuthContext {
  readonly params: Promise<{ readonly nextauth: string[] }>;
}

/** next-auth's own handler, typed: the package declares it as `any`. */
export async function runNextAuth(request: NextRequest, context: NextAuthContext): Promise<Response> {
  const answer: unknown = await NextAuth(request, context, nextAuthOptions());
  if (!(answer instanceof Response)) throw new Error("next-auth gave no response.");
  return answer;
}
