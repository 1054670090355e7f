import { componentKinds, componentSchema, vehicleDocumentSchema } from "@probeworthy/vehicle";
import { describe, expect, it } from "vitest";
import { z } from "zod";
import { componentKindNames, componentSpecs } from "./component-specs";
import type { FieldSpec } from "./field-spec";
import { duplicate, newComponent, newCondition, newRecord, nextDesignator } from "./new-record";
import { conditionKinds, sectionNames, sectionSpecs } from "./section-specs";

const blank = { title: "Bench", components: [], conditions: [], conductors: [] };

/** Property names of a schema's objects and of a form's fields, each as `a.b`, lists and choices flattened. */
type Json = {
  properties?: Record<string, Json>;
  items?: Json;
  anyOf?: Json[];
  oneOf?: Json[];
  $ref?: string;
};

function schemaKeys(schema: Json, prefix = ""): string[] {
  const inner = schema.anyOf ?? schema.oneOf ?? (schema.items === undefined ? undefined : [schema.items]);
  if (inner !== undefined) return [...new Set(inner.flatMap((one) => schemaKeys(one, prefix)))];
  return Object.entries(schema.properties ?? {}).flatMap(([key, own]) => {
    if (key === "kind" || own.$ref !== undefined) return key === "kind" ? [] : [`${prefix}${key}`];
    const deeper = schemaKeys(own, `${prefix}${key}.`);
    return deeper.length === 0 ? [`${prefix}${key}`] : deeper;
  });
}

const specKeys = (specs: readonly FieldSpec[], prefix = ""): string[] =>
  specs.flatMap((spec) => {
    const path = `${prefix}${spec.key}`;
    if (spec.type === "group") return specKeys(spec.fields, `${path}.`);
    if (spec.type !== "list") return [path];
    return [...new Set(spec.shapes.flatMap(({ fields }) => specKeys(fields, `${path}.`)))];
  });

const toJson = (schema: z.ZodType): Json =>
  z.toJSONSchema(schema, { io: "input", unrepresentable: "any" }) as Json;
const shared = ["id", "title", "place", "zone"];
/** Properties one field holds as a whole. */
const wholes = /^(.*\.pull\.to)\..*$/;
const tidy = (keys: readonly string[]) =>
  [...new Set(keys.map((key) => key.replace(wholes, "$1")))].filter((key) => !shared.includes(key)).sort();

describe("the forms of components", () => {
  it("there is one for every kind", () => {
    expect([...componentKindNames].sort()).toEqual([...componentKinds].sort());
  });

  it.each(componentKindNames)(
    "%s: every property of the document has a field and no field is invented",
    (kind) => {
      const option = componentSchema.options.find((one) => one.shape.kind.value === kind);
      expect(tidy(specKeys(componentSpecs[kind].fields))).toEqual(
        tidy(schemaKeys(toJson(option as z.ZodType))),
      );
    },
  );

  it.each(componentKindNames)("a new %s is complete but for what only the author knows", (kind) => {
    const parsed = componentSchema.safeParse(newComponent(blank, kind));
    const missing = parsed.success ? [] : parsed.error.issues.map(({ path }) => path.join("."));
    expect(missing).toEqual(kind === "switch" ? ["condition"] : []);
  });
});

describe("the tables", () => {
  it.each(["connectors", "conductors", "splices", "groundPoints", "systems", "symptoms"] as const)(
    "%s: every property of the document has a field",
    (section) => {
      const spec = sectionSpecs[section];
      const schema = toJson(vehicleDocumentSchema.shape[section]);
      const keys = specKeys([...spec.columns, ...spec.fields]).map((key) =>
        key.replace(/^chart\.conditions.*/, "chart.conditions"),
      );
      expect(tidy(keys)).toEqual(tidy(schemaKeys(schema)));
    },
  );

  it("conditions of both kinds have a field for every property", () => {
    for (const option of vehicleDocumentSchema.shape.conditions.element.options) {
      const kind = option.shape.kind.value;
      const keys = specKeys([...sectionSpecs.conditions.columns, ...conditionKinds[kind]]);
      expect(tidy(keys)).toEqual(tidy(schemaKeys(toJson(option))));
      expect(option.safeParse(newCondition(blank, kind)).success).toBe(true);
    }
  });

  it("gives new rows names that are free", () => {
    const draft = { components: [{ id: "E1" }, { id: "F1" }], conductors: [{ id: "E2" }] };
    expect(nextDesignator(draft, "E")).toBe("E3");
    expect(duplicate(draft, "components", { id: "F1", title: "Fuse" })).toEqual({ id: "F2", title: "Fuse" });
    const names = sectionNames.map((section) => {
      const record = newRecord({ ...draft, systems: [{ id: "system" }] }, section);
      return record[sectionSpecs[section].nameKey];
    });
    expect(names).toEqual(["E3", "X1", "W1", "XS1", "XE1", "key", "system2", "symptom"]);
  });
});
