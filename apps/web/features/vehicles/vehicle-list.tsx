import Link from "next/link";
import { Cell, HeaderCell, Table, TableBody, TableHead, TableRow } from "@/components/table";
import { Tag } from "@/components/tag";
import { ArchiveVehicleButton } from "@/features/authoring/archive-vehicle-button";
import type { VehiclesView } from "./vehicles-view";

type Vehicle = VehiclesView["vehicles"][number];

/** Every vehicle that is there: supplied ones to be read, own ones to be changed too. */
export function VehicleList({ vehicles }: { readonly vehicles: readonly Vehicle[] }) {
  return (
    <Table caption="Vehicles" captionHidden>
      <TableHead>
        <tr>
          <HeaderCell>Vehicle</HeaderCell>
          <HeaderCell>Systems</HeaderCell>
          <HeaderCell numeric>Version</HeaderCell>
          <HeaderCell>Draft</HeaderCell>
          <HeaderCell numeric>Charts checked</HeaderCell>
          <HeaderCell>
            <span className="sr-only">Actions</span>
          </HeaderCell>
        </tr>
      </TableHead>
      <TableBody>
        {vehicles.map((vehicle) => (
          <TableRow key={vehicle.id}>
            <HeaderCell scope="row">
              <Link
                href={vehicle.version === null ? `/vehicles/${vehicle.id}/edit` : `/vehicles/${vehicle.id}`}
                className="link inline-block min-h-6"
              >
                {vehicle.name}
              </Link>
              {!vehicle.own && <span className="block text-sm font-normal text-ink-soft">supplied</span>}
            </HeaderCell>
            <Cell>{vehicle.systems.join(", ")}</Cell>
            <Cell numeric>{vehicle.version ?? "none yet"}</Cell>
            <Cell>{vehicle.hasDraft && <Tag state="active">in work</Tag>}</Cell>
            <Cell numeric>
              {vehicle.version === null ? (
                "0"
              ) : (
                <Link href={`/vehicles/${vehicle.id}/charts`} className="link inline-block min-h-6 min-w-6">
                  {vehicle.charts}
                  <span className="sr-only"> charts of {vehicle.name}</span>
                </Link>
              )}
            </Cell>
            <Cell>
              {vehicle.own && (
                <span className="flex justify-end gap-4">
                  <Link
                    href={`/vehicles/${vehicle.id}/edit`}
                    aria-label={`Change ${vehicle.name}`}
                    className="link inline-flex min-h-6 items-center"
                  >
                    Change
                  </Link>
                  <ArchiveVehicleButton vehicleId={vehicle.id} name={vehicle.name} />
                </span>
              )}
            </Cell>
          </TableRow>
        ))}
      </TableBody>
    </Table>
  );
}
