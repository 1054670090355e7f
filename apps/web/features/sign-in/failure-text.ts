export type SignInFailure = "wrong_credentials" | "too_many_tries" | "no_account" | "unavailable";

export const failureText: Readonly<
  Record<SignInFailure, { readonly title: string; readonly detail: string }>
> = {
  wrong_credentials: {
    title: "Email and password do not match",
    detail:
      "Check both and try again. If you have forgotten the password, ask your instructor or administrator for a new one.",
  },
  too_many_tries: {
    title: "Too many tries",
    detail: "Wait a quarter of an hour, then try again.",
  },
  no_account: {
    title: "There is no account for you here yet",
    detail: "Your organisation knows you, but nobody has added you to Probeworthy. Ask your administrator.",
  },
  unavailable: {
    title: "Signing in did not work",
    detail:
      "Nothing is wrong with what you typed. Try again in a moment; if it goes on, tell your administrator.",
  },
};

/** Turns next-auth's `?error=` into one of ours. */
export function toSignInFailure(error: string | undefined): SignInFailure | undefined {
  if (error === undefined) return undefined;
  if (error === "wrong_credentials" || error === "too_many_tries") return error;
  if (error === "CredentialsSignin") return "wrong_credentials";
  return error === "AccessDenied" ? "no_account" : "unavailable";
}
