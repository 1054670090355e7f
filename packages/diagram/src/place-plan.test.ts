import { type VehicleDocument, zones } from "@probeworthy/vehicle";
import { expect, test } from "vitest";
import { layoutPlacePlan } from "./place-plan";
import { boxesOverlap } from "./quality";
import { smallVehicle } from "./testing/small-vehicle";

/** Every component in a field of its own kind of crowd: all lamps in one, the rest spread over all fields. */
const zoned: VehicleDocument = {
  ...smallVehicle,
  components: Array.from({ length: 5 }, (_, turn) =>
    smallVehicle.components.map((one, index) => ({
      ...one,
      id: `${one.id}${turn}`,
      zone: turn < 3 ? "engine" : (zones[(index + turn) % zones.length] ?? "boot"),
    })),
  ).flat(),
};

test("every field of the vehicle is on the plan once, and none covers another", () => {
  const { fields } = layoutPlacePlan(smallVehicle);
  expect(fields.map(({ zone }) => zone).sort()).toEqual([...zones].sort());
  fields.forEach((one, index) => {
    for (const other of fields.slice(index + 1)) expect(boxesOverlap(one, other)).toBe(false);
  });
});

test("every mark lies in its field and covers no other", () => {
  const { fields } = layoutPlacePlan(zoned);
  const marks = fields.flatMap((field) => field.marks.map((mark) => ({ field, mark })));
  expect(marks).toHaveLength(zoned.components.length);
  marks.forEach(({ field, mark }, index) => {
    expect(mark.box.x).toBeGreaterThanOrEqual(field.x);
    expect(mark.box.x + mark.box.width).toBeLessThanOrEqual(field.x + field.width);
    expect(mark.box.y + mark.box.height).toBeLessThanOrEqual(field.y + field.height);
    for (const other of marks.slice(index + 1)) expect(boxesOverlap(mark.box, other.mark.box)).toBe(false);
  });
});

test("what has no field is listed aside, nothing is lost", () => {
  const plan = layoutPlacePlan(zoned);
  const listed = zoned.connectors.length + zoned.splices.length + zoned.groundPoints.length;
  expect(plan.unplaced).toHaveLength(listed);
});
