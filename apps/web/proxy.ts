import { type NextRequest, NextResponse } from "next/server";
import { contentSecurityPolicy } from "./content-security-policy";
import { env, isDevelopment } from "./env";

/** Gives every page a fresh script nonce and tells it its own address (for the way back after sign-in). */
export function proxy(request: NextRequest): NextResponse {
  const nonce = Buffer.from(crypto.getRandomValues(new Uint8Array(16))).toString("base64");
  const issuer = env().OIDC_ISSUER;
  const policy = contentSecurityPolicy({
    nonce,
    development: isDevelopment,
    formTargets: issuer === undefined ? [] : [new URL(issuer).origin],
  });
  const headers = new Headers(request.headers);
  headers.set("x-nonce", nonce);
  headers.set("x-requested-path", request.nextUrl.pathname + request.nextUrl.search);
  headers.set("Content-Security-Policy", policy);
  const response = NextResponse.next({ request: { headers } });
  response.headers.set("Content-Security-Policy", policy);
  return response;
}

export const config = { matcher: ["/((?!api/|_next/static|_next/image|favicon.ico|icon.svg).*)"] };
