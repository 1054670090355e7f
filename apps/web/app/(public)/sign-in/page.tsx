import type { Metadata } from "next";
import { redirect } from "next/navigation";
import { buttonClass } from "@/components/button-class";
import { env } from "@/env";
import { PlainSheet } from "@/features/shell/plain-sheet";
import { DemoSignIns } from "@/features/sign-in/demo-sign-ins";
import { toSignInFailure } from "@/features/sign-in/failure-text";
import { openIdConnectAction } from "@/features/sign-in/sign-in-action";
import { SignInForm } from "@/features/sign-in/sign-in-form";
import { safeReturnPath } from "@/server/auth/safe-return-path";
import { currentUser } from "@/server/auth/session";

export const metadata: Metadata = { title: "Sign in" };

export default async function SignInPage({ searchParams }: PageProps<"/sign-in">) {
  const query = await searchParams;
  // next-auth hands the way back as a whole address; only its path counts.
  const asked = typeof query.callbackUrl === "string" ? query.callbackUrl : "/";
  const callbackUrl = safeReturnPath(
    URL.canParse(asked) ? new URL(asked).pathname + new URL(asked).search : asked,
  );
  if ((await currentUser()) !== undefined) redirect(callbackUrl);
  const { OIDC_ISSUER, OIDC_NAME, PROBEWORTHY_DEMO } = env();
  return (
    <PlainSheet
      entries={[
        { label: "Sheet", value: "Sign in" },
        { label: "State", value: PROBEWORTHY_DEMO ? "Demonstration" : "Ready" },
      ]}
    >
      <div className="flex flex-wrap gap-x-16 gap-y-10">
        <div className="w-full max-w-md">
          <h1>Sign in</h1>
          <p className="mt-1 mb-6 text-ink-soft">Find the fault, and show how you know.</p>
          {query.signedOut === "1" && (
            <p role="status" className="mb-5 border-l-4 border-ink bg-panel p-4">
              You are signed out.
            </p>
          )}
          <SignInForm
            callbackUrl={callbackUrl}
            failure={toSignInFailure(typeof query.error === "string" ? query.error : undefined)}
          />
          {OIDC_ISSUER !== undefined && (
            <form action={openIdConnectAction} className="mt-5 border-t border-hairline pt-5">
              <input type="hidden" name="callbackUrl" value={callbackUrl} />
              <button type="submit" className={`${buttonClass()} w-full`}>
                Continue with {OIDC_NAME ?? "your organisation's account"}
              </button>
            </form>
          )}
        </div>
        {PROBEWORTHY_DEMO && <DemoSignIns />}
      </div>
    </PlainSheet>
  );
}
