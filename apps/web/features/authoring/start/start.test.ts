import { parseVehicle, parseVehicleDraft, vehicleDocumentSchema } from "@probeworthy/vehicle";
import { describe, expect, it } from "vitest";
import { blankVehicle } from "./blank-vehicle";
import { conductorExample, connectorExample } from "./example-lists";
import { vehicleFromLists } from "./vehicle-from-lists";

describe("what a vehicle starts from", () => {
  it("a blank sheet can be kept and lacks only a system", () => {
    const blank = blankVehicle("a-car", "A car");
    expect(parseVehicleDraft(blank).ok).toBe(true);
    const { error } = vehicleDocumentSchema.safeParse(blank);
    expect(error?.issues.map(({ path }) => path.join("."))).toEqual(["systems"]);
  });
});

describe("two spreadsheets", () => {
  it("the example files become parts without a message", () => {
    const made = vehicleFromLists("own", "Own", {
      connectors: connectorExample,
      conductors: conductorExample,
    });
    expect(made.messages).toEqual([]);
    expect(
      (made.document.components as { id: string; kind: string }[]).map(({ id, kind }) => `${id} ${kind}`),
    ).toEqual(["E1 lamp", "G1 battery", "F1 fuse", "S1 switch"]);
    const systems = [
      {
        id: "lamp",
        title: "Lamp",
        components: ["G1", "F1", "S1", "E1"],
        howItWorks: [],
        normalSurprises: [],
        cautions: [],
        chart: [],
      },
    ];
    const parsed = parseVehicle({ ...made.document, systems });
    expect(parsed.ok ? [] : parsed.error).toEqual([]);
  });

  it("says what is wrong with a line and goes on", () => {
    const conductors = [
      "Wire;From;To;Color;mm²;Length",
      "W1;G1:+;F1:1;rd;2,5;1",
      "W1;F1:2;E1:1;RD;1;1",
      "wire two;F1:2;E1:1;RD;1;1",
      "W3;nowhere;E1:1;RD;1;1",
      "W4;F1:2;E1:1;mauve;thick;",
    ].join("\n");
    const made = vehicleFromLists("own", "Own", { connectors: "plug;pin\nX1;1\nX1;1\nx9;1", conductors });
    expect(made.messages.map(({ file, line, severity }) => `${file} ${line} ${severity}`)).toEqual([
      "connectors 3 error",
      "conductors 3 error",
      "conductors 4 error",
      "conductors 5 error",
      "conductors 6 warning",
      "conductors 6 warning",
      "conductors 6 warning",
    ]);
    expect(made.document.conductors).toEqual([
      { id: "W1", from: "G1:+", to: "F1:1", colour: "RD", squareMillimetres: 2.5, metres: 1 },
      { id: "W4", from: "F1:2", to: "E1:1", colour: "BK", squareMillimetres: 1, metres: 1 },
    ]);
  });
});
