import type { ElementDefinition } from "./elements/definition";
import { findDefinition } from "./elements/registry";
import type { CircuitElement } from "./network";
import { fail, type Result, succeed } from "./result";

const fine = succeed(undefined);

/** Checks one element by itself: names present, every number within its range. */
export function validateElement(element: CircuitElement): Result<void> {
  if (typeof element !== "object" || element === null) {
    return fail("invalid_element", `An element is ${describe(element)} and not an object.`);
  }
  const { id, kind } = element;
  if (typeof id !== "string" || id === "") {
    return fail("invalid_element", `An element of the kind ${describe(kind)} has no id.`);
  }
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
  const message = `"${id}": ${field} must be ${rule.says}, not ${describe(value)}.`;
  return fail("invalid_element", message, { element: id, field });
}

/** A value in a message. An object may refuse to be turned into a string. */
function describe(value: unknown): string {
  if (typeof value === "object" && value !== null) return Array.isArray(value) ? "a list" : "an object";
  if (typeof value === "function" || typeof value === "symbol") return `a ${typeof value}`;
  return typeof value === "string" ? `"${value}"` : String(value);
}

/** What the kind has against fields taken together. */
export function refuse(element: CircuitElement, definition: ElementDefinition<CircuitElement>): Result<void> {
  const objection = definition.refuse?.(element);
  if (!objection) return succeed(undefined);
  const { message, field } = objection;
  return fail("invalid_element", `"${element.id}": ${message}`, { element: element.id, field });
}
