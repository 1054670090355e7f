"use server";

import { cookies, headers } from "next/headers";
import { redirect } from "next/navigation";
import { NextRequest } from "next/server";
import { z } from "zod";
import { runNextAuth } from "@/server/auth/run-next-auth";
import { safeReturnPath } from "@/server/auth/safe-return-path";
import { type SignInFailure, toSignInFailure } from "./failure-text";

export interface SignInState {
  readonly failure: SignInFailure | undefined;
  readonly email: string;
}

/**
 * Signs in through next-auth's own handler, so that the form also works before (or without) JavaScript. Next.js has
 * already checked that the form came from this server.
 */
export async function signInAction(_previous: SignInState, form: FormData): Promise<SignInState> {
  const email = String(form.get("email") ?? "");
  const callbackUrl = safeReturnPath(form.get("callbackUrl"));
  const answer = await post(["callback", "credentials"], {
    email,
    password: String(form.get("password") ?? ""),
    callbackUrl,
    json: "true",
  });
  const url = z.object({ url: z.string() }).parse(await answer.json()).url;
  const failure = toSignInFailure(new URL(url).searchParams.get("error") ?? undefined);
  if (answer.ok && failure === undefined) redirect(callbackUrl);
  return { email, failure: failure ?? "unavailable" };
}

/** Starts the sign-in at the organisation's own identity provider. */
export async function openIdConnectAction(form: FormData): Promise<void> {
  const answer = await post(["signin", "oidc"], {
    callbackUrl: safeReturnPath(form.get("callbackUrl")),
    json: "true",
  });
  redirect(z.object({ url: z.url() }).parse(await answer.json()).url);
}

export async function signOutAction(): Promise<void> {
  await post(["signout"], { callbackUrl: "/sign-in", json: "true" });
  redirect("/sign-in?signedOut=1");
}

async function post(nextauth: string[], fields: Record<string, string>): Promise<Response> {
  const csrfAnswer = await callNextAuth(["csrf"]);
  const { csrfToken } = z.object({ csrfToken: z.string() }).parse(await csrfAnswer.json());
  return callNextAuth(nextauth, new URLSearchParams({ ...fields, csrfToken }));
}

/** Calls the handler and carries the cookies it sets over to this answer. */
async function callNextAuth(nextauth: string[], form?: URLSearchParams): Promise<Response> {
  const incoming = await headers();
  const url = `http://${incoming.get("host") ?? "localhost"}/api/auth/${nextauth.join("/")}`;
  const request = new NextRequest(url, {
    method: form === undefined ? "GET" : "POST",
    ...(form === undefined
      ? {}
      : { body: form.toString(), headers: { "Content-Type": "application/x-www-form-urlencoded" } }),
  });
  const answer = await runNextAuth(request, { params: Promise.resolve({ nextauth }) });
  const jar = await cookies();
  for (const cookie of answer.headers.getSetCookie()) jar.set(parseSetCookie(cookie));
  return answer;
}

function parseSetCookie(header: string) {
  const [pair = "", ...attributes] = header.split(";").map((part) => part.trim());
  const equals = pair.indexOf("=");
  const find = (name: string) =>
    attributes.find((part) => part.toLowerCase().startsWith(`${name}=`))?.slice(name.length + 1);
  const has = (name: string) => attributes.some((part) => part.toLowerCase() === name);
  const expires = find("expires");
  const maxAge = find("max-age");
  return {
    name: pair.slice(0, equals),
    value: decodeURIComponent(pair.slice(equals + 1)),
    path: find("path") ?? "/",
    httpOnly: has("httponly"),
    secure: has("secure"),
    sameSite: "lax" as const,
    ...(expires === undefined ? {} : { expires: new Date(expires) }),
    ...(maxAge === undefined ? {} : { maxAge: Number(maxAge) }),
  };
}
