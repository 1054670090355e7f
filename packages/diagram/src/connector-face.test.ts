import { expect, test } from "vitest";
import { connectorFace } from "./connector-face";
import { smallVehicle } from "./testing/small-vehicle";

const face = (id: string, view: "wire" | "terminal") => {
  const found = connectorFace(smallVehicle, id, view);
  if (found === undefined) throw new Error(`no connector ${id}`);
  return found;
};

test("cavities are numbered row by row seen from the wire side", () => {
  const { cavities } = face("X1", "wire");
  expect(cavities.map(({ cavity, row, column }) => `${cavity}:${row}.${column}`)).toEqual([
    "1:0.0",
    "2:0.1",
    "3:0.2",
    "4:0.3",
    "5:1.0",
    "6:1.1",
    "7:1.2",
    "8:1.3",
  ]);
});

test("the mating side mirrors left and right and keeps the rows", () => {
  const wire = face("X1", "wire");
  const terminal = face("X1", "terminal");
  for (const [index, cavity] of wire.cavities.entries()) {
    const mirrored = terminal.cavities[index];
    expect(mirrored?.y).toBe(cavity.y);
    expect((mirrored?.x ?? 0) + cavity.x + cavity.width).toBe(wire.width);
  }
});

test("empty cavities are marked, wired ones carry their conductor and colour", () => {
  const { cavities } = face("X1", "wire");
  expect(cavities.filter((cavity) => cavity.empty).map((cavity) => cavity.cavity)).toEqual(["4", "8"]);
  expect(cavities[1]).toMatchObject({
    conductor: "W4",
    colour: ["RD", "YE"],
    terminal: "30",
    harnessPoint: "X1.2:h",
  });
});

test("an in-line connector has a conductor on each face", () => {
  expect(face("X7", "wire").cavities[0]).toMatchObject({
    conductor: "W6",
    secondConductor: "W7",
    facingPoint: "X7.1:b",
  });
});

test("a numbered cavity stands at its number even when one before it is not listed", () => {
  const document = structuredClone(smallVehicle);
  const connector = document.connectors.find(({ id }) => id === "X1");
  if (connector === undefined) throw new Error("X1 is gone");
  connector.cavities = connector.cavities.filter(({ cavity }) => cavity !== "4");
  const cavities = connectorFace(document, "X1", "wire")?.cavities;
  expect(cavities?.find(({ cavity }) => cavity === "5")).toMatchObject({
    row: 1,
    column: 0,
    conductor: "W10",
  });
  expect(cavities?.find(({ cavity }) => cavity === "4")).toMatchObject({ row: 0, column: 3, empty: true });
});

test("a connector that does not exist has no face", () => {
  expect(connectorFace(smallVehicle, "X99", "wire")).toBeUndefined();
});
