import { describe, expect, it } from "vitest";
import { prepareVehicle } from "../compile/compile-vehicle";
import { settle } from "../simulation/settle";
import { startState } from "../simulation/state";
import { benchVehicle } from "../testing/bench-vehicle";
import { must } from "../testing/drive";
import { blankVehicle, checkDraft, exportVehicle, importVehicle, vehicleJsonSchema } from "./index";

describe("blankVehicle", () => {
  const blank = blankVehicle({ id: "a-car", title: "A car" });
  it("has nothing to correct and can be measured at once", () => {
    expect(checkDraft(blank).messages).toEqual([]);
    const vehicle = must(prepareVehicle(blank));
    const settled = must(settle(vehicle, must(startState(vehicle))));
    expect(settled.volts("XD1:30") - settled.volts("G1:-")).toBeCloseTo(12.6, 0);
  });
});

describe("export and import", () => {
  it("give the same document back", () => {
    const again = importVehicle(exportVehicle(benchVehicle));
    expect(again.ok && checkDraft(again.value).document).toEqual(benchVehicle);
  });
  it("keep what is half done, and name what cannot be kept", () => {
    const half = importVehicle(
      '\uFEFF{"format":"probeworthy-vehicle-1","id":"a","title":"A","components":[{"id":7}]}',
    );
    expect(half.ok && half.value.components).toEqual([{ id: 7 }]);
    const wrong = importVehicle('{"format":"another","id":"a","title":"A","conductors":"none"}');
    expect(wrong.ok ? [] : wrong.error.map(({ path }) => path)).toEqual(["format", "conductors"]);
    const text = importVehicle("connector;cavity");
    expect(text.ok ? [] : text.error.map(({ path }) => path)).toEqual([""]);
  });
});

describe("vehicleJsonSchema", () => {
  it("says what it is and names every list", () => {
    const schema = vehicleJsonSchema();
    expect(schema).toMatchObject({
      $id: "urn:probeworthy:vehicle:1",
      type: "object",
      additionalProperties: false,
    });
    expect(schema.required).toEqual(
      expect.arrayContaining(Object.keys(benchVehicle).filter((key) => key !== "drawing")),
    );
  });
});
