import { Cell, HeaderCell, Table, TableBody, TableHead, TableRow } from "@/components/table";
import type { ChartsView } from "./charts-view";

const columns = [
  {
    name: "terminal",
    also: "point, pin, cavity",
    text: "A test point (X10.3:h), a cavity (X10.3 is its harness side), or for amps a conductor or component (W12, M1).",
  },
  { name: "function", also: "description, signal", text: "What the terminal does, in words." },
  {
    name: "condition",
    also: "conditions, state, when",
    text: "A condition title of this vehicle, or settings such as key=on; engineSpeed=800; unplugged=X10. Empty: the vehicle as it stands, key off.",
  },
  { name: "expected low", also: "low, min", text: "Lower limit. One of the two limits may be empty." },
  { name: "expected high", also: "high, max", text: "Upper limit." },
  { name: "unit", also: "units", text: "V, mV, Ω (or ohm), kΩ (or kohm), A." },
  {
    name: "against",
    also: "reference, black lead",
    text: "May be left out: where the black lead stands. Empty: the battery's negative post.",
  },
] as const;

/** How a chart file is written, beside the place where it is wanted. */
export function ChartGuide({ view }: { readonly view: ChartsView }) {
  return (
    <section aria-labelledby="charts-guide" className="space-y-4 border-t-2 border-ink pt-4">
      <h2 id="charts-guide">How a chart is written</h2>
      <p className="max-w-prose">
        The first line names the columns; their order, capitals and further columns do not matter. Cells are
        parted by commas, semicolons or tabs. Decimal commas are read, in quotes where a comma also parts
        cells.
      </p>
      <Table caption="Columns of a chart" captionHidden>
        <TableHead>
          <tr>
            <HeaderCell>Column</HeaderCell>
            <HeaderCell>Also read</HeaderCell>
            <HeaderCell>What stands in it</HeaderCell>
          </tr>
        </TableHead>
        <TableBody>
          {columns.map((column) => (
            <TableRow key={column.name}>
              <HeaderCell scope="row" className="whitespace-nowrap">
                <code>{column.name}</code>
              </HeaderCell>
              <Cell>{column.also}</Cell>
              <Cell>{column.text}</Cell>
            </TableRow>
          ))}
        </TableBody>
      </Table>
      <div className="grid gap-8 lg:grid-cols-2">
        <div>
          <h3 className="mb-1">Condition titles of this vehicle</h3>
          <ul className="list-disc pl-5">
            {view.conditionTitles.map((title) => (
              <li key={title}>{title}</li>
            ))}
          </ul>
        </div>
        <div>
          <h3 className="mb-1">Settings of this vehicle</h3>
          <ul className="list-disc pl-5">
            {view.conditionNames.map(({ name, title, values }) => (
              <li key={name}>
                <code>{name}</code>, {title}: {values}
              </li>
            ))}
          </ul>
        </div>
      </div>
    </section>
  );
}
