import Link from "next/link";
import { EmptyState } from "@/components/empty-state";
import { Cell, HeaderCell, Table, TableBody, TableHead, TableRow } from "@/components/table";
import { SheetPage } from "@/features/shell/sheet-page";
import { requireUser } from "@/server/auth/require-user";
import { teachers } from "@/server/auth/staff";
import { database } from "@/server/database";
import { loadVehicles } from "@/server/views/vehicles-view";

export const metadata = { title: "Vehicles" };

export default async function VehiclesPage() {
  const user = await requireUser(teachers);
  const { vehicles } = await loadVehicles(await database(), user.organisationId);
  return (
    <SheetPage
      title="Vehicles"
      lead="What scenarios are built on. Check the model of a vehicle against a terminal chart of your own."
      entries={[
        { label: "Name", value: user.name },
        { label: "Sheet", value: "Vehicles" },
        { label: "Vehicles", value: vehicles.length },
      ]}
    >
      {vehicles.length === 0 ? (
        <EmptyState title="No vehicle is there">An administrator of this server adds vehicles.</EmptyState>
      ) : (
        <Table caption="Vehicles" captionHidden>
          <TableHead>
            <tr>
              <HeaderCell>Vehicle</HeaderCell>
              <HeaderCell>Systems</HeaderCell>
              <HeaderCell numeric>Version</HeaderCell>
              <HeaderCell numeric>Charts checked</HeaderCell>
            </tr>
          </TableHead>
          <TableBody>
            {vehicles.map((vehicle) => (
              <TableRow key={vehicle.id}>
                <HeaderCell scope="row">
                  <Link href={`/vehicles/${vehicle.id}`} className="link inline-block min-h-6">
                    {vehicle.name}
                  </Link>
                </HeaderCell>
                <Cell>{vehicle.systems.join(", ")}</Cell>
                <Cell numeric>{vehicle.version}</Cell>
                <Cell numeric>
                  <Link href={`/vehicles/${vehicle.id}/charts`} className="link inline-block min-h-6 min-w-6">
                    {vehicle.charts}
                    <span className="sr-only"> charts of {vehicle.name}</span>
                  </Link>
                </Cell>
              </TableRow>
            ))}
          </TableBody>
        </Table>
      )}
    </SheetPage>
  );
}
