import type { ElementDefinition } from "./elements/definition";
import { findDefinition } from "./elements/registry";
import type { CircuitElement } from "./network";
import { fail, type Result, succeed } from "./result";

const fine = succeed(undefined);

/** Checks one element by itself: names present, every number within its range. */
export function validateElement(element: CircuitElement): Result<void> {
  const { id, kind } = element;
  if (typeof id !== "string" || id === "") return fail("invalid_element", `A ${kind} has no id.`);
  const definition = findDefinition(element);
  if (!definition) return fail("invalid_element", `"${id}" is of an unknown kind.`, { element: id });
  for (const node of definition.terminals(element)) {
    if (typeof node !== "string" || node === "") {
      return fail("invalid_element", `A terminal of "${id}" names no node.`, { element: id });
    }
  }
  const fields = element as unknown as Readonly<Record<string, unknown>>;
  for (const field of Object.keys(definition.fields)) {
    const valid = validateField(id, definition, field, fields[field]);
    if (!valid.ok) return valid;
  }
  return refuse(element, definition);
}

/** Checks the value of one changeable field. */
export function validateField(
  id: string,
  definition: ElementDefinition<CircuitElement>,
  field: string,
  value: unknown,
): Result<void> {
  const rule = definition.fields[field];
  if (value === undefined && !definition.required.includes(field)) return fine;
  if (rule.test(value)) return fine;
  const message = `"${id}": ${field} must be ${rule.says}, not ${String(value)}.`;
  return fail("invalid_element", message, { element: id, field });
}

/** What the kind has against fields taken together. */
export function refuse(element: CircuitElement, definition: ElementDefinition<CircuitElement>): Result<void> {
  const objection = definition.refuse?.(element);
  if (!objection) return succeed(undefined);
  const { message, field } = objection;
  return fail("invalid_element", `"${element.id}": ${message}`, { element: element.id, field });
}
