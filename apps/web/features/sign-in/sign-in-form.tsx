"use client";

import { useActionState } from "react";
import { Button } from "@/components/button";
import { Field } from "@/components/field";
import { TextInput } from "@/components/inputs";
import { ProblemNotice } from "@/components/problem-notice";
import { failureText } from "./failure-text";
import { type SignInState, signInAction } from "./sign-in-action";

export interface SignInFormProps {
  readonly callbackUrl: string;
  /** A failure that came back in the page's address, e.g. from the identity provider. */
  readonly failure: SignInState["failure"];
}

export function SignInForm({ callbackUrl, failure }: SignInFormProps) {
  const [state, action, pending] = useActionState(signInAction, { failure, email: "" });
  return (
    <form action={action} className="space-y-5">
      {state.failure !== undefined && <ProblemNotice problem={failureText[state.failure]} />}
      <input type="hidden" name="callbackUrl" value={callbackUrl} />
      <Field label="Email" required>
        <TextInput
          key={state.email}
          type="email"
          name="email"
          autoComplete="username"
          autoCapitalize="none"
          spellCheck={false}
          maxLength={320}
          defaultValue={state.email}
        />
      </Field>
      <Field label="Password" required>
        <TextInput type="password" name="password" autoComplete="current-password" maxLength={512} />
      </Field>
      <Button type="submit" kind="primary" busy={pending} className="w-full">
        {pending ? "Signing in…" : "Sign in"}
      </Button>
    </form>
  );
}
