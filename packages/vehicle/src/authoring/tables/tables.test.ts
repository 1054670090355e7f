import { describe, expect, it } from "vitest";
import { benchVehicle } from "../../testing/bench-vehicle";
import { parseColour } from "./colours";
import { exportTables } from "./export-tables";
import { importTables } from "./import-tables";
import { parseEnd } from "./places";
import { parseCrossSection, parseLength } from "./quantities";

describe("colours", () => {
  it.each([
    ["RD", "RD"],
    ["yebk", "YEBK"],
    ["BLK", "BK"],
    ["BLK/WHT", "BKWH"],
    ["R/W", "RDWH"],
    ["RW", "RDWH"],
    ["L-Y", "BUYE"],
    ["red with white stripe", "RDWH"],
    ["grey", "GY"],
    ["GRYBLU", "GYBU"],
    ["BR", "BN"],
    ["sw/ge", "BKYE"],
  ])("%s is %s", (text, code) => expect(parseColour(text)).toEqual({ ok: true, value: code }));

  it.each([
    ["", "missing"],
    ["P", "PK"],
    ["mauve", "IEC 60757"],
    ["red/white/blue", "two"],
  ])("%j is asked back", (text, word) => {
    const found = parseColour(text);
    expect(found.ok ? "" : found.error).toContain(word);
  });
});

describe("ends", () => {
  it.each([
    ["X12.3", "", "X12.3"],
    ["X12/3", "", "X12.3"],
    ["X12 pin 3", "", "X12.3"],
    ["x12-a", "", "X12.A"],
    ["X12", "3", "X12.3"],
    ["X12 cav. 3", "", "X12.3"],
    ["X7.2/b", "", "X7.2/b"],
    ["X7/2/b", "", "X7.2/b"],
    ["XS4", "", "XS4"],
    ["splice 4", "", "XS4"],
    ["GND", "", "XE1"],
    ["ground 2", "", "XE2"],
    ["G1:+", "", "G1:+"],
    ["G1:-", "", "G1:-"],
    ["F1/2", "", "F1:2"],
    ["K1", "87a", "K1:87a"],
    ["S1 terminal 15", "", "S1:15"],
  ])("%s %s is %s", (text, pin, end) => expect(parseEnd(text, pin)).toEqual({ ok: true, value: end }));

  it.each(["", "nowhere", "F1", "X12.four"])("%j is no end", (text) => {
    const found = parseEnd(text);
    expect(found.ok ? "" : found.error).toContain("write X12.3");
  });
});

describe("quantities", () => {
  it.each([
    ["0.75", "mm2", 0.75],
    ["0,75 mm²", "mm2", 0.75],
    ["2.5 sq mm", "mm2", 2.5],
    ["18 AWG", "mm2", 0.823],
    ["AWG 18", "mm2", 0.823],
    ["18", "awg", 0.823],
    ["2/0 AWG", "mm2", 67.4],
  ] as const)("%s is %f mm²", (text, unit, value) =>
    expect(parseCrossSection(text, unit)).toEqual({ ok: true, value }),
  );

  it.each([
    ["1.2", "m", 1.2],
    ["1,2 m", "m", 1.2],
    ["1200 mm", "m", 1.2],
    ["850", "mm", 0.85],
    ["4 ft", "m", 1.2192],
  ] as const)("%s is %f m", (text, unit, value) =>
    expect(parseLength(text, unit)).toEqual({ ok: true, value }),
  );
});

describe("the two lists", () => {
  it("a vehicle's own lists give its connectors and conductors back", () => {
    const again = importTables(exportTables(benchVehicle));
    expect(again.messages).toEqual([]);
    expect(again.connectors).toEqual(benchVehicle.connectors);
    expect(again.conductors).toEqual(benchVehicle.conductors);
    const ids = (list: readonly { id: string }[]) => list.map(({ id }) => id).sort();
    const ended = new Set(benchVehicle.conductors.flatMap(({ from, to }) => [from, to]));
    expect(ids(again.groundPoints)).toEqual(ids(benchVehicle.groundPoints.filter(({ id }) => ended.has(id))));
  });

  it("reads a list as another college keeps it", () => {
    const made = importTables({
      connectors: "Pin;Plug;Device\n1;X5;M1\n2;X5;M1\n",
      conductors:
        "Color;Wire No.;From connector;From pin;To connector;To pin;AWG;Length [mm]\nR/W;7;F1;2;X5;1;14;1500\nBLK;8;X5;2;GND;;14;400\n",
    });
    expect(made.messages).toEqual([]);
    expect(made.conductors).toEqual([
      { id: "W7", from: "F1:2", to: "X5.1", colour: "RDWH", squareMillimetres: 2.08, metres: 1.5 },
      { id: "W8", from: "X5.2", to: "XE1", colour: "BK", squareMillimetres: 2.08, metres: 0.4 },
    ]);
    expect(made.components.map(({ id, terminals }) => [id, terminals])).toEqual([
      ["M1", ["1", "2"]],
      ["F1", ["2"]],
    ]);
    expect(made.groundPoints.map(({ id }) => id)).toEqual(["XE1"]);
  });

  it("names row and column of every mistake at once", () => {
    const { messages, conductors } = importTables({
      connectors: "connector,cavity,component\nX1,1,E1\nX1,1,E1\nnine,1,\nX2,1,E1\nX2,2,E2\n",
      conductors:
        "conductor,from,to,colour,mm2,length\nW1,X1.1,XE1,RD,1,1\nW1,X1.1,XE1,RD,1,1\nW2,nowhere,XE1,RD,1,1\nW3,X1.1,XE1,mauve,thick,\n",
    });
    expect(messages.map(({ table, severity, row, column }) => [table, severity, row, column])).toEqual([
      ["connectors", "error", 3, "cavity"],
      ["connectors", "error", 4, "connector"],
      ["connectors", "error", 6, "component"],
      ["conductors", "error", 3, "conductor"],
      ["conductors", "error", 4, "from"],
      ["conductors", "warning", 5, "colour"],
      ["conductors", "warning", 5, "cross-section"],
      ["conductors", "warning", 5, "length"],
    ]);
    expect(conductors.map(({ id }) => id)).toEqual(["W1", "W3"]);
  });

  it("says which column is missing, and adds cavities that only conductors name", () => {
    const { messages, connectors } = importTables({
      connectors: "plug\nX1\n",
      conductors: "id,from,to,colour,mm2,length\nW1,X1.1,XE1,RD,1,1\n",
    });
    expect(messages.map(({ row, message }) => [row, message.split(";")[0]])).toEqual([
      [1, "the first row must name the columns"],
      [0, "X1 has no row for cavity 1, where conductors end"],
    ]);
    expect(connectors).toEqual([
      { id: "X1", title: "Connector X1", rows: 1, columns: 1, cavities: [{ cavity: "1" }] },
    ]);
  });
});
