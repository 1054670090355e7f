import type { Zone } from "@probeworthy/vehicle";
import { Cell, HeaderCell, Table, TableBody, TableHead, TableRow } from "@/components/table";
import type { ServiceSystem } from "./service-view";

const zoneWords = (zone: Zone): string => zone.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);

/** Where the components of a system sit. */
export function PlaceTable({ places }: { readonly places: ServiceSystem["places"] }) {
  return (
    <Table caption="Where each part sits" captionHidden>
      <TableHead>
        <tr>
          <HeaderCell>Part</HeaderCell>
          <HeaderCell>Place</HeaderCell>
          <HeaderCell>Field of the plan</HeaderCell>
        </tr>
      </TableHead>
      <TableBody>
        {places.map(({ id, title, place, zone }) => (
          <TableRow key={id}>
            <Cell>
              <code className="font-semibold">{id}</code> {title}
            </Cell>
            <Cell>{place ?? "–"}</Cell>
            <Cell>{zone === null ? "–" : zoneWords(zone)}</Cell>
          </TableRow>
        ))}
      </TableBody>
    </Table>
  );
}
