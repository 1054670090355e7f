import Link from "next/link";
import { notFound } from "next/navigation";
import { buttonClass } from "@/components/button-class";
import { SheetPage } from "@/features/shell/sheet-page";
import { VehicleScreen } from "@/features/vehicles/vehicle-screen";
import { requireUser } from "@/server/auth/require-user";
import { teachers } from "@/server/auth/staff";
import { database } from "@/server/database";
import { loadVehicleView } from "@/server/views/vehicles-view";

export const metadata = { title: "Vehicle" };

export default async function VehiclePage({ params }: { readonly params: Promise<{ id: string }> }) {
  const { organisationId } = await requireUser(teachers);
  const { id } = await params;
  const store = await database();
  const version = await store.vehicles.latestVersion({ organisationId, vehicleId: id });
  if (version === null) notFound();
  const view = await loadVehicleView(store, organisationId, version);
  return (
    <SheetPage
      title={view.name}
      lead={view.description}
      above={
        <Link href="/vehicles" className="link">
          All vehicles
        </Link>
      }
      actions={
        <>
          {view.own && (
            <>
              <Link href={`/vehicles/${id}/edit`} className={buttonClass("quiet")}>
                Change it
              </Link>
              <Link href={`/vehicles/${id}/versions`} className={buttonClass("quiet")}>
                Versions
              </Link>
            </>
          )}
          <Link href={`/vehicles/${id}/charts`} className={buttonClass("primary")}>
            Check a terminal chart
          </Link>
        </>
      }
      wide
      entries={[
        { label: "Vehicle", value: view.name },
        { label: "Version", value: view.version },
        { label: "Components", value: view.counts.components },
        { label: "Connectors", value: view.counts.connectors },
        { label: "Conductors", value: view.counts.conductors },
      ]}
    >
      <VehicleScreen view={view} />
    </SheetPage>
  );
}
