import { describe, expect, it } from "vitest";
import { recordsOf } from "../fields/new-record";
import { sectionSpecs } from "../fields/section-specs";
import { parseCells, pasteInto } from "./paste";

const { columns } = sectionSpecs.conductors;
const draft = {
  conductors: [{ id: "W1", from: "G1:+", to: "F1:1", colour: "RD", squareMillimetres: 4, metres: 1 }],
};

describe("pasting from a spreadsheet", () => {
  it("reads rows, cells and quoted cells", () => {
    expect(parseCells('W1\tG1:+\r\nW2\t"a ""b""\nc"\r\n')).toEqual([
      ["W1", "G1:+"],
      ["W2", 'a "b"\nc'],
    ]);
  });

  it("fills from the chosen cell on and adds the rows that are missing", () => {
    const cells = parseCells("F1:2\tS1:1\tRDWH\t1,5\t2\nS1:2\tE1:1\tGY\t0.75\t0.8");
    const pasted = recordsOf(
      pasteInto(draft, "conductors", columns, { row: 0, column: 1 }, cells),
      "conductors",
    );
    expect(pasted).toEqual([
      { id: "W1", from: "F1:2", to: "S1:1", colour: "RDWH", squareMillimetres: 1.5, metres: 2 },
      { id: "W2", from: "S1:2", to: "E1:1", colour: "GY", squareMillimetres: 0.75, metres: 0.8 },
    ]);
  });

  it("keeps what is no number so that the check can say so, and drops cells beyond the last column", () => {
    const cells = parseCells("thick\t1\tpair\textra\n\n");
    const [row] = recordsOf(
      pasteInto(draft, "conductors", columns, { row: 0, column: 4 }, cells),
      "conductors",
    );
    expect(row).toMatchObject({ squareMillimetres: "thick", metres: 1, twistedPair: "pair" });
    expect(Object.values(row ?? {})).not.toContain("extra");
  });
});
