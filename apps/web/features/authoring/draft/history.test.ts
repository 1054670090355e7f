import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type History, record, redo, seal, startHistory, undo } from "./history";

const typed = (history: History<string>, value: string, key?: string) =>
  record(history, { value, label: value, key });

describe("the steps of an author", () => {
  it("undoing every step leads back to the start, redoing every one to the end", () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(fc.string(), fc.option(fc.constantFrom("a", "b")))), (steps) => {
        let history = startHistory("start");
        for (const [value, key] of steps) history = typed(history, value, key ?? undefined);
        const end = history;
        for (let step = 0; step < end.past.length; step++) history = undo(history);
        expect(history.present.value).toBe("start");
        expect(undo(history)).toBe(history);
        for (let step = 0; step < end.past.length; step++) history = redo(history);
        expect(history.present).toEqual(end.present);
        expect(redo(history)).toBe(history);
      }),
    );
  });

  it("letters typed into one field are one step, until the field is left", () => {
    let history = typed(typed(typed(startHistory(""), "1", "rating"), "15", "rating"), "15x", "title");
    expect(history.past.map(({ value }) => value)).toEqual(["", "15"]);
    history = typed(seal(history), "15y", "title");
    expect(undo(history).present.value).toBe("15x");
  });

  it("a new change after undo drops what was undone", () => {
    const history = typed(undo(typed(startHistory("a"), "b")), "c");
    expect(history.future).toEqual([]);
    expect(undo(history).present.value).toBe("a");
  });

  it("writing the same again is no step", () => {
    const history = startHistory("a");
    expect(typed(history, "a")).toBe(history);
  });
});
