import type { Metadata } from "next";
import Link from "next/link";
import { buttonClass } from "@/components/button-class";
import { PlainSheet } from "@/features/shell/plain-sheet";
import { signOutAction } from "@/features/sign-in/sign-in-action";
import { requireUser } from "@/server/auth/require-user";

export const metadata: Metadata = { title: "Sign out" };

export default async function SignOutPage() {
  const user = await requireUser();
  return (
    <PlainSheet entries={[{ label: "Sheet", value: "Sign out" }]}>
      <h1>Sign out?</h1>
      <p className="mt-2 mb-6">You are signed in as {user.name}.</p>
      <form action={signOutAction} className="flex flex-wrap gap-3">
        <button type="submit" className={buttonClass("primary")}>
          Sign out
        </button>
        <Link href="/" className={buttonClass()}>
          Stay signed in
        </Link>
      </form>
    </PlainSheet>
  );
}
