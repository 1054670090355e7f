import Link from "next/link";
import { GuideScreen } from "@/features/authoring/guide-screen";
import { SheetPage } from "@/features/shell/sheet-page";
import { requireUser } from "@/server/auth/require-user";
import { teachers } from "@/server/auth/staff";

export const metadata = { title: "Make your own vehicle" };

export default async function VehicleGuidePage() {
  const user = await requireUser(teachers);
  return (
    <SheetPage
      title="Make your own vehicle"
      lead="From a blank sheet to a system that can be measured, broken and handed out."
      above={
        <Link href="/vehicles" className="link">
          All vehicles
        </Link>
      }
      entries={[
        { label: "Name", value: user.name },
        { label: "Sheet", value: "Guide" },
      ]}
    >
      <GuideScreen />
    </SheetPage>
  );
}
