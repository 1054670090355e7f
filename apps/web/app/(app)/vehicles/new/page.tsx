import Link from "next/link";
import { NewVehicleForm } from "@/features/authoring/start/new-vehicle-form";
import { SheetPage } from "@/features/shell/sheet-page";
import { requireUser } from "@/server/auth/require-user";
import { teachers } from "@/server/auth/staff";
import { newVehicleView } from "@/server/views/authoring-view";

export const metadata = { title: "New vehicle" };

export default async function NewVehiclePage() {
  const user = await requireUser(teachers);
  return (
    <SheetPage
      title="New vehicle"
      lead={
        <>
          The college's own car, bench or board.{" "}
          <Link href="/vehicles/guide" className="link">
            A ten-minute walk
          </Link>{" "}
          leads to a first working system.
        </>
      }
      above={
        <Link href="/vehicles" className="link">
          All vehicles
        </Link>
      }
      entries={[
        { label: "Name", value: user.name },
        { label: "Sheet", value: "New vehicle" },
      ]}
    >
      <NewVehicleForm view={newVehicleView()} />
    </SheetPage>
  );
}
