import Link from "next/link";
import type { ReactNode } from "react";
import { Cell, HeaderCell, Table, TableBody, TableHead, TableRow } from "@/components/table";
import { conductorExample } from "./start/example-lists";

interface Step {
  readonly title: string;
  readonly text: ReactNode;
}

const steps: readonly Step[] = [
  {
    title: "Make a blank sheet",
    text: (
      <>
        On <Link href="/vehicles/new">New vehicle</Link> choose “A blank sheet” and give it a name. The
        battery G1, its ground point XE1 and the condition <code>key</code> (off, on) are already there.
      </>
    ),
  },
  {
    title: "Add a fuse, a switch and a lamp",
    text: (
      <>
        In Components choose the kind and press “Add component”: Fuse becomes F1, Switch S1, Lamp E1. The form
        that opens holds usual values; change the fuse's rating if you like. The switch is worked by{" "}
        <code>key</code> and joins its terminals 1 and 2 while the key is on.
      </>
    ),
  },
  {
    title: "Wire it",
    text: (
      <>
        In Conductors add the rows of the table below, or copy them and paste them into the first cell. A
        conductor ends at a component terminal (<code>F1:1</code>), a cavity (<code>X2.5</code>), a splice or
        a ground point (<code>XE1</code>). The first lead, from the battery to the fuse, is 0.2 m long: it has
        no fuse before it. Ends that exist are offered as you type.
      </>
    ),
  },
  {
    title: "Name the system",
    text: "In Systems name what is on the sheet: its title and the components G1 F1 S1 E1. The drawing at the right follows.",
  },
  {
    title: "Say what is measured",
    text: (
      <>
        Open the form of the system and add a row to its terminal chart: point <code>E1:1</code>, function
        “Lamp feed”, the car stands with <code>key</code> on. The Chart panel shows what a meter reads there
        at once.
      </>
    ),
  },
  {
    title: "Say what the driver sees",
    text: (
      <>
        In Symptoms add one: follows <code>loadAmps(E1)</code>, below 0.5 “dark”, above “lit”.
      </>
    ),
  },
  {
    title: "Publish",
    text: "The Messages panel names what is missing and leads to the field. When none is left that stops it, press Publish. The vehicle can then be chosen for a new scenario, with every fault its parts can have.",
  },
];

const ends = [
  { write: "F1:1", means: "terminal 1 of the component F1, wired without a plug" },
  { write: "X2.5", means: "cavity 5 of the connector X2" },
  { write: "X7.2/b", means: "the second wired face of an in-line connector" },
  { write: "XS1, XE1", means: "a splice, a ground point" },
] as const;

const formulas = [
  {
    write: "volts(T1) > 2.5 and not overheated",
    means: "in a module: a terminal of its own and an earlier signal",
  },
  { write: "key = on", means: "in a sensor or symptom: a condition has this option" },
  { write: "table(roadSpeed, 0: 0, 100: 740)", means: "straight lines between points, constant outside" },
  { write: "if(volts(15) > 6, 1, 0)", means: "one value or the other; yes is 1, no is 0" },
  { write: "min(a, b), max(a, b), abs(a), sign(a)", means: "the usual functions" },
  {
    write: "message(speed), heard(speed), amps(out), failed(C1511)",
    means: "what a module receives, drives, stores",
  },
  {
    write: "loadAmps(E1), pulledIn(K1), signal(A1, lamp)",
    means: "only in symptoms: what goes on elsewhere",
  },
] as const;

/** How a vehicle is made, in the order it is done. */
export function GuideScreen() {
  return (
    <div className="max-w-4xl space-y-10">
      <section aria-labelledby="guide-walk" className="space-y-4">
        <h2 id="guide-walk">Ten minutes: battery, fuse, switch, lamp</h2>
        <ol className="space-y-4">
          {steps.map(({ title, text }, index) => (
            <li key={title} className="grid grid-cols-[2.5rem_1fr]">
              <span className="font-mono text-xl font-semibold" aria-hidden="true">
                {index + 1}
              </span>
              <div className="max-w-prose [&_a]:link">
                <h3>{title}</h3>
                <p>{text}</p>
              </div>
            </li>
          ))}
        </ol>
        <ConductorRows />
      </section>
      <Words id="guide-ends" title="Where a conductor ends" rows={ends} />
      <Words id="guide-formulas" title="Formulas" rows={formulas}>
        Signs: <code>+ - * /</code>, <code>&gt; &lt; &gt;= &lt;= =</code>, <code>and or not</code>, brackets.
        Values stand in volts, amperes, ohms, seconds; temperatures in °C, road speed in km/h, engine speed in
        1/min.
      </Words>
      <section aria-labelledby="guide-missing" className="max-w-prose space-y-2">
        <h2 id="guide-missing">A kind that is missing</h2>
        <p>
          Choose “Composed of parts” and put it together from resistors, current-voltage curves, switches,
          diodes, voltage sources and contacts that close at a voltage, between its terminals and inner nodes.
          A curve can be pasted from a spreadsheet, two columns at a time.
        </p>
      </section>
      <section aria-labelledby="guide-keys" className="max-w-prose space-y-2">
        <h2 id="guide-keys">Keys and saving</h2>
        <p>
          <kbd>Ctrl + Z</kbd> takes back any step since the page was opened, <kbd>Ctrl + Shift + Z</kbd> does
          it again. In a table <kbd>Enter</kbd> goes down and adds a row at the end, <kbd>Alt</kbd> and arrows
          go to any cell. A new name for a part is carried to every place that speaks of it. The draft is
          saved as you work; when the server cannot be reached it is kept on the screen and sent later. On the
          drawing, drag a part to place it, or move it with <kbd>Alt</kbd> and arrows.
        </p>
        <p>
          A draft can be exported as JSON and taken in again; the{" "}
          <a href="/api/vehicle-schema" className="link">
            JSON Schema
          </a>{" "}
          says what stands where.
        </p>
      </section>
    </div>
  );
}

function ConductorRows() {
  const [header = [], ...rows] = conductorRows;
  return (
    <Table caption="Conductors of the walk">
      <TableHead>
        <tr>
          {header.map((cell) => (
            <HeaderCell key={cell}>{cell}</HeaderCell>
          ))}
        </tr>
      </TableHead>
      <TableBody>
        {rows.map((row) => (
          <TableRow key={row[0]}>
            {row.map((cell, index) => (
              <Cell key={header[index]} className="font-mono">
                {cell}
              </Cell>
            ))}
          </TableRow>
        ))}
      </TableBody>
    </Table>
  );
}

/** The example's lines without its plug: the walk wires the lamp directly. */
const conductorRows = conductorExample
  .trim()
  .split("\n")
  .map((line) => line.replace("X1.1", "E1:1").replace("X1.2", "E1:2").split(","));

interface WordsProps {
  readonly id: string;
  readonly title: string;
  readonly rows: readonly { readonly write: string; readonly means: string }[];
  readonly children?: ReactNode;
}

function Words({ id, title, rows, children }: WordsProps) {
  return (
    <section aria-labelledby={id} className="space-y-2">
      <h2 id={id}>{title}</h2>
      {children !== undefined && <p className="max-w-prose">{children}</p>}
      <Table caption={title} captionHidden>
        <TableHead>
          <tr>
            <HeaderCell>Write</HeaderCell>
            <HeaderCell>For</HeaderCell>
          </tr>
        </TableHead>
        <TableBody>
          {rows.map(({ write, means }) => (
            <TableRow key={write}>
              <Cell>
                <code>{write}</code>
              </Cell>
              <Cell>{means}</Cell>
            </TableRow>
          ))}
        </TableBody>
      </Table>
    </section>
  );
}
