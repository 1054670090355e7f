import { traceConductor as traceInDocument } from "@probeworthy/diagram/trace";
import { trainingVehicle } from "@probeworthy/training-vehicle";
import { expect, test, vi } from "vitest";
import { traceConductor } from "../diagram/trace";
import { searchPapers } from "./search-papers";

vi.mock("server-only", () => ({}));
const { paperIndexOf } = await import("../../server/views/paper-index");
const index = paperIndexOf("test", trainingVehicle);
const ids = (asked: string) => searchPapers(index, asked).map(({ id }) => id);

test("a designator is found before everything that merely contains it", () => {
  for (const { id } of trainingVehicle.components.slice(0, 20)) expect(ids(id)[0]).toBe(id);
});

test("titles, colour codes, colour names, cavities and places are found", () => {
  const [conductor] = trainingVehicle.conductors;
  const [connector] = trainingVehicle.connectors;
  const placed = trainingVehicle.components.find(({ place }) => place !== undefined);
  if (conductor === undefined || connector === undefined || placed?.place === undefined)
    throw new Error("the training vehicle has conductors, connectors and places");
  expect(ids(`${conductor.id} ${conductor.colour}`)).toContain(conductor.id);
  expect(ids(`${connector.id}.${connector.cavities[0]?.cavity}`)).toContain(connector.id);
  expect(ids(`${placed.id} ${placed.place}`)).toContain(placed.id);
  expect(ids("no such thing anywhere")).toEqual([]);
});

test("every word counts, and what is on no sheet is not offered", () => {
  for (const entry of searchPapers(index, "ground")) expect(entry.systems).not.toEqual([]);
  expect(ids("battery nonsense")).toEqual([]);
});

test("a path holds each of its conductors once, whichever of them it is traced from", () => {
  const conductors = index.entries.filter(({ kind }) => kind === "conductor");
  for (const { id } of conductors) {
    const trace = traceConductor(index, id);
    const walked = trace?.stations.filter(({ kind }) => kind === "conductor").map((one) => one.id) ?? [];
    expect([...walked].sort()).toEqual([...(trace?.conductors ?? [])].sort());
    for (const other of trace?.conductors ?? [])
      expect(traceConductor(index, other)?.conductors).toEqual(trace?.conductors);
  }
});

test("the path in the browser is the one the drawing package finds in the document", () => {
  for (const { id } of trainingVehicle.conductors)
    expect(traceConductor(index, id)?.conductors).toEqual(
      new Set(traceInDocument(trainingVehicle, id)?.conductors),
    );
});

test("a path goes on through a splice and ends at components and ground points", () => {
  const splice = trainingVehicle.splices.find(({ id }) => {
    return trainingVehicle.conductors.filter(({ from, to }) => from === id || to === id).length > 1;
  });
  if (splice === undefined) throw new Error("the training vehicle has splices");
  const at = trainingVehicle.conductors.filter(({ from, to }) => from === splice.id || to === splice.id);
  const trace = traceConductor(index, at[0]?.id ?? "");
  for (const { id } of at) expect(trace?.conductors.has(id)).toBe(true);
  const splices = new Set(trainingVehicle.splices.map(({ id }) => id));
  expect(splices.has(trace?.stations[0]?.id ?? splice.id)).toBe(false);
  expect(splices.has(trace?.stations.at(-1)?.id ?? splice.id)).toBe(false);
  expect(traceConductor(index, "W99999")).toBeUndefined();
});
