import Link from "next/link";
import { buttonClass } from "@/components/button-class";
import { SheetPage } from "@/features/shell/sheet-page";

export const metadata = { title: "Nothing here" };

export default function NotFound() {
  return (
    <SheetPage
      title="There is nothing at this address"
      lead="It may have been removed, or it belongs to somebody else. Check the address, or start from your own page."
      entries={[
        { label: "Sheet", value: "Nothing here" },
        { label: "State", value: "404" },
      ]}
    >
      <Link href="/" className={buttonClass("primary")}>
        Go to my page
      </Link>
    </SheetPage>
  );
}
