import { colourCodes } from "@probeworthy/vehicle";
import { expect, test } from "vitest";
import { colourName, displayColour, splitColour } from "./colours";

test("every IEC 60757 code the document may use has its own display colour", () => {
  const light = colourCodes.map((code) => displayColour(code).light);
  expect(new Set(light).size).toBe(colourCodes.length);
});

test("two-colour codes split into base and stripe and read as words", () => {
  expect(splitColour("YEBK")).toEqual(["YE", "BK"]);
  expect(splitColour("RD")).toEqual(["RD"]);
  expect(colourName(["YE", "BK"])).toBe("yellow with black stripe");
  expect(() => displayColour("XX")).toThrow(/IEC 60757/);
});
