"use server";

import { redirect } from "next/navigation";
import { z } from "zod";
import { signInAction } from "@/features/sign-in/sign-in-action";
import { currentUser } from "@/server/auth/session";
import { database } from "@/server/database";
import { acceptInvitation } from "@/server/services/accept-invitation";
import { loadInvitation } from "@/server/views/invitation-view";

export interface AcceptState {
  readonly name: string;
  readonly errors: { readonly name?: string; readonly password?: string };
  readonly failure: "unknown" | "used" | "expired" | "revoked" | "sign_in_required" | undefined;
}

const nameSchema = z
  .string()
  .trim()
  .min(2, "Write your name as it should stand on the result.")
  .max(120, "Write at most 120 characters.");
const passwordSchema = z
  .string()
  .min(10, "Take at least 10 characters.")
  .max(512, "Take at most 512 characters.");

/** Takes the invitation up and goes to the job. Next.js has already checked that the form came from this server. */
export async function acceptAction(_previous: AcceptState, form: FormData): Promise<AcceptState> {
  const token = String(form.get("token") ?? "");
  const now = new Date();
  const store = await database();
  const invitation = await loadInvitation(store, token, now);
  const user = await currentUser();
  // Somebody else's session (the manager trying the link, a shared computer) does not take it up.
  const signedIn = user?.email === invitation?.email ? user : undefined;
  const name = nameSchema.safeParse(signedIn?.name ?? form.get("name"));
  const password = signedIn === undefined ? passwordSchema.safeParse(form.get("password")) : undefined;
  const typedName = String(form.get("name") ?? "");
  if (!name.success || password?.success === false) {
    return {
      name: typedName,
      errors: {
        ...(name.success ? {} : { name: name.error.issues[0]?.message ?? "" }),
        ...(password?.success === false ? { password: password.error.issues[0]?.message ?? "" } : {}),
      },
      failure: undefined,
    };
  }
  const accepted = await acceptInvitation(store, signedIn, {
    token,
    name: name.data,
    password: password?.data,
    now,
  });
  if (!accepted.ok) return { name: typedName, errors: {}, failure: accepted.error.code };
  const { attemptId } = accepted.value;
  const target = attemptId === undefined ? "/jobs" : `/jobs/${attemptId}`;
  if (signedIn !== undefined || password === undefined || invitation === undefined) redirect(target);
  const credentials = new FormData();
  credentials.set("email", invitation.email);
  credentials.set("password", password.data);
  credentials.set("callbackUrl", target);
  await signInAction({ failure: undefined, email: invitation.email }, credentials);
  // Signing in redirects; it comes back only when it failed. The account stands, so the ordinary way in is open.
  redirect(`/sign-in?callbackUrl=${encodeURIComponent(target)}`);
}
