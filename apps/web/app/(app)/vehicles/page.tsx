import Link from "next/link";
import { buttonClass } from "@/components/button-class";
import { EmptyState } from "@/components/empty-state";
import { SheetPage } from "@/features/shell/sheet-page";
import { VehicleList } from "@/features/vehicles/vehicle-list";
import { requireUser } from "@/server/auth/require-user";
import { teachers } from "@/server/auth/staff";
import { database } from "@/server/database";
import { loadVehicles } from "@/server/views/vehicles-view";

export const metadata = { title: "Vehicles" };

export default async function VehiclesPage() {
  const user = await requireUser(teachers);
  const { vehicles } = await loadVehicles(await database(), user.organisationId);
  const newVehicle = (
    <Link href="/vehicles/new" className={buttonClass("primary")}>
      New vehicle
    </Link>
  );
  return (
    <SheetPage
      title="Vehicles"
      lead={
        <>
          What scenarios are built on: the supplied one and your own.{" "}
          <Link href="/vehicles/guide" className="link">
            Make your own vehicle
          </Link>
        </>
      }
      actions={newVehicle}
      entries={[
        { label: "Name", value: user.name },
        { label: "Sheet", value: "Vehicles" },
        { label: "Vehicles", value: vehicles.length },
      ]}
    >
      {vehicles.length === 0 ? (
        <EmptyState title="No vehicle is there" action={newVehicle}>
          Make one of your own, or let an administrator of this server add the supplied one.
        </EmptyState>
      ) : (
        <VehicleList vehicles={vehicles} />
      )}
    </SheetPage>
  );
}
