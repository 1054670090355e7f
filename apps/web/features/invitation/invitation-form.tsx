"use client";

import Link from "next/link";
import { useActionState } from "react";
import { Button } from "@/components/button";
import { buttonClass } from "@/components/button-class";
import { Field } from "@/components/field";
import { TextInput } from "@/components/inputs";
import { ProblemNotice } from "@/components/problem-notice";
import { type AcceptState, acceptAction } from "./accept-action";

export interface InvitationFormProps {
  readonly token: string;
  readonly name: string;
  readonly email: string;
  /** Somebody is signed in: they use the link as themselves. */
  readonly signedInAs: string | undefined;
}

const failures: Readonly<Record<NonNullable<AcceptState["failure"]>, { title: string; detail: string }>> = {
  unknown: {
    title: "This link is not known",
    detail: "Check that the whole link was copied, or ask for a new one.",
  },
  used: {
    title: "This link has been used",
    detail: "If it was you, sign in to go on. Otherwise ask for a new one.",
  },
  expired: { title: "This link has run out", detail: "Ask the shop for a new one." },
  revoked: { title: "This link was withdrawn", detail: "Ask the shop if you think that is a mistake." },
  sign_in_required: {
    title: "There is already an account for this address",
    detail: "Sign in with it first; you come back here and can take the invitation up.",
  },
};

export function InvitationForm({ token, name, email, signedInAs }: InvitationFormProps) {
  const [state, action, pending] = useActionState(acceptAction, { name, errors: {}, failure: undefined });
  return (
    <form action={action} className="space-y-5" noValidate>
      {state.failure !== undefined && (
        <ProblemNotice
          problem={failures[state.failure]}
          action={
            (state.failure === "sign_in_required" || state.failure === "used") && (
              <Link
                href={`/sign-in?callbackUrl=${encodeURIComponent(`/invitations/${token}`)}`}
                className={buttonClass("quiet")}
              >
                Sign in
              </Link>
            )
          }
        />
      )}
      <input type="hidden" name="token" value={token} />
      {signedInAs === undefined ? (
        <>
          <Field
            label="Your name"
            hint="As it should stand on the result."
            required
            {...(state.errors.name === undefined ? {} : { error: state.errors.name })}
          >
            <TextInput
              key={state.name}
              name="name"
              autoComplete="name"
              maxLength={120}
              defaultValue={state.name}
            />
          </Field>
          <Field
            label="Choose a password"
            hint={`At least 10 characters. With it and ${email} you can come back, should the connection drop.`}
            required
            {...(state.errors.password === undefined ? {} : { error: state.errors.password })}
          >
            <TextInput type="password" name="password" autoComplete="new-password" maxLength={512} />
          </Field>
        </>
      ) : (
        <p>
          You are signed in as <strong>{signedInAs}</strong>.
        </p>
      )}
      <Button type="submit" kind="primary" busy={pending} className="w-full">
        {pending ? "Getting the car ready…" : "Take the job over"}
      </Button>
    </form>
  );
}
