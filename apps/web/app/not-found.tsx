import Link from "next/link";
import { buttonClass } from "@/components/button-class";
import { PlainSheet } from "@/features/shell/plain-sheet";

export const metadata = { title: "Nothing here" };

export default function NotFound() {
  return (
    <PlainSheet
      entries={[
        { label: "Sheet", value: "Nothing here" },
        { label: "State", value: "404" },
      ]}
    >
      <h1>There is nothing at this address</h1>
      <p className="mt-2 mb-6 max-w-prose">
        It may have been removed, or it belongs to somebody else. Check the address, or start from your own
        page.
      </p>
      <Link href="/" className={buttonClass("primary")}>
        Go to my page
      </Link>
    </PlainSheet>
  );
}
