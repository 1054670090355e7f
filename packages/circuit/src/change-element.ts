import type { Expanded } from "./expansion";
import type { CircuitElement, ElementChange } from "./network";
import { fail, type Result, succeed } from "./result";
import { refuse, validateField } from "./validate-element";

const done = succeed(undefined);

/** Checks a change and makes it in place; nothing changes when an error comes back. */
export function applyChange(
  { element, definition }: Pick<Expanded, "element" | "definition">,
  change: ElementChange,
): Result<void> {
  const fields = element as unknown as Record<string, unknown>;
  const wanted = change as Readonly<Record<string, unknown>>;
  for (const field in wanted) {
    const where = { element: element.id, field };
    if (!Object.hasOwn(definition.fields, field)) {
      const message = `"${element.id}" is a ${element.kind} and has no ${field} to change.`;
      return fail("invalid_element", message, where);
    }
    if (definition.topological?.includes(field) && fields[field] === undefined) {
      const message = `"${element.id}" was prepared without ${field}; prepare it anew.`;
      return fail("invalid_element", message, where);
    }
    const valid = validateField(element.id, definition, field, wanted[field]);
    if (!valid.ok) return valid;
  }
  if (definition.refuse) {
    const valid = refuse({ ...element, ...wanted } as CircuitElement, definition);
    if (!valid.ok) return valid;
  }
  for (const field in wanted) fields[field] = wanted[field];
  return done;
}
