import { describe, expect, it } from "vitest";
import { formatPath, getAt, insertAt, moveAt, parsePath, removeAt, setAt } from "./path";

const document = { components: [{ id: "F1", ratingAmps: 15 }, { id: "E1" }], title: "Bench" };

describe("paths in a document", () => {
  it.each(["title", "components[1].id", "components[0].cavities[12].terminal", "drawing.placed.lights.F1"])(
    "%s is read and written alike",
    (text) => {
      expect(formatPath(parsePath(text))).toBe(text);
    },
  );

  it("changes one place and shares the rest", () => {
    const changed = setAt(document, ["components", 0, "ratingAmps"], 20);
    expect(changed.components[0]).toEqual({ id: "F1", ratingAmps: 20 });
    expect(changed.components[1]).toBe(document.components[1]);
    expect(document.components[0]?.ratingAmps).toBe(15);
  });

  it("takes a property out when it is given undefined", () => {
    expect(setAt(document, ["components", 0, "ratingAmps"], undefined).components[0]).toEqual({ id: "F1" });
  });

  it("makes what is missing on the way", () => {
    const changed = setAt(document, parsePath("drawing.placed.lights.F1"), { x: 1, y: 2 });
    expect(getAt(changed, parsePath("drawing.placed.lights.F1.y"))).toBe(2);
  });

  it("inserts, moves and removes list items", () => {
    const three = insertAt(document, ["components"], [{ id: "S1" }], 1);
    expect(three.components.map(({ id }) => id)).toEqual(["F1", "S1", "E1"]);
    expect(moveAt(three, ["components"], 2, 0).components.map(({ id }) => id)).toEqual(["E1", "F1", "S1"]);
    expect(moveAt(three, ["components"], 0, -1)).toBe(three);
    expect(removeAt(three, ["components"], 0).components.map(({ id }) => id)).toEqual(["S1", "E1"]);
    expect(insertAt(document, ["symptoms"], [{ id: "a" }])).toMatchObject({ symptoms: [{ id: "a" }] });
  });
});
