import { describe, expect, it } from "vitest";
import { benchVehicle } from "../testing/bench-vehicle";
import { checkDraft, vehicleJsonSchema } from "./index";

describe("checkDraft", () => {
  it("hands out the document with what practice would ask", () => {
    const { document } = checkDraft(JSON.parse(JSON.stringify(benchVehicle)));
    expect(document).toEqual(benchVehicle);
    const bare = checkDraft({ ...benchVehicle, conductors: [] });
    expect(bare.document).toBeDefined();
    expect(bare.messages.length).toBeGreaterThan(checkDraft(benchVehicle).messages.length);
  });
  it("names the path of what is half done, and of what leads nowhere", () => {
    const [first, ...others] = benchVehicle.conductors;
    const half = checkDraft({ ...benchVehicle, conductors: [{ ...first, metres: "long" }, ...others] });
    expect(half.document).toBeUndefined();
    expect(half.messages.map(({ path }) => path)).toEqual(["conductors[0].metres"]);
    const lost = checkDraft({ ...benchVehicle, conductors: [{ ...first, to: "X99.1" }, ...others] });
    expect(lost.messages).toMatchObject([{ path: "conductors[0].to", message: "there is no connector X99" }]);
  });
});

describe("vehicleJsonSchema", () => {
  it("says what it is and requires every list", () => {
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
