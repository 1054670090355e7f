import { trainingVehicle } from "@probeworthy/training-vehicle";
import { parseVehicle } from "@probeworthy/vehicle";
import { describe, expect, it } from "vitest";
import type { Draft } from "../fields/new-record";
import { setAt } from "./path";
import { renameEverywhere } from "./rename";

type Section = Parameters<typeof renameEverywhere>[1];

/** Renames one row as the table does: its own name, then wherever it is spoken of. */
function rename(draft: Draft, section: Section, from: string, to: string): Draft {
  const list = draft[section] as readonly Record<string, unknown>[];
  const nameKey = section === "conditions" ? "name" : "id";
  const index = list.findIndex((record) => record[nameKey] === from);
  return renameEverywhere(setAt(draft, [section, index, nameKey], to), section, from, to);
}

const named = (section: Section) =>
  (trainingVehicle[section] as readonly { id?: string; name?: string }[]).map(
    ({ id, name }) => id ?? name ?? "",
  );

/** At most so many names, from all over the list: each rename walks the whole vehicle. */
const spread = (names: readonly string[], most = 15): readonly string[] =>
  names.filter((_, index) => index % Math.ceil(names.length / most) === 0);

describe("renaming", () => {
  it.each(["components", "connectors", "conductors", "splices", "groundPoints", "conditions"] as const)(
    "%s of the training vehicle can be renamed and nothing is left hanging",
    (section) => {
      let draft: Draft = { ...trainingVehicle };
      for (const name of spread(named(section))) {
        const next =
          section === "conditions" ? `${name}New` : `${/^[A-Z]+/.exec(name)?.[0]}9${name.replace(/\D/g, "")}`;
        draft = rename(draft, section, name, next);
      }
      const parsed = parseVehicle(draft);
      expect(parsed.ok ? [] : parsed.error).toEqual([]);
    },
  );

  it("does not touch longer names, terminals or titles", () => {
    const draft = {
      components: [{ id: "F9", title: "F1", internalLinks: [{ from: "F1", to: "F1" }], terminals: ["F1"] }],
      conductors: [
        { id: "W1", from: "F1:1", to: "F12:1" },
        { id: "W2", from: "XS1", to: "F10" },
      ],
      drawing: { placed: { lights: { F1: { x: 1, y: 2 }, F12: { x: 3, y: 4 } } } },
    };
    const renamed = renameEverywhere(draft, "components", "F1", "F5");
    expect(renamed).toEqual({
      ...draft,
      conductors: [{ id: "W1", from: "F5:1", to: "F12:1" }, draft.conductors[1]],
      drawing: { placed: { lights: { F5: { x: 1, y: 2 }, F12: { x: 3, y: 4 } } } },
    });
    expect(renamed.components).toBe(draft.components);
  });
});
