import type { NewtonSystem } from "./kernel/newton-system";
import type { Numbering } from "./numbering";
import type { CircuitError } from "./result";

/** Whose equation a row is, in the network's own words. */
export function nameRow(row: number, numbering: Numbering): { node?: string; element?: string } {
  for (const [node, index] of numbering.indexOf) if (index === row) return { node };
  const element = numbering.owner.get(row);
  return element === undefined ? {} : { element };
}

export const describeRow = (where: { node?: string; element?: string }): string =>
  where.node === undefined ? `element "${where.element}"` : `node "${where.node}"`;

export function singularAt(row: number, numbering: Numbering): CircuitError {
  const where = nameRow(row, numbering);
  return {
    code: "singular",
    message: `The network has no single answer at ${describeRow(where)}.`,
    ...where,
  };
}

export function unconverged(system: NewtonSystem, numbering: Numbering): CircuitError {
  const { iterations } = system;
  const where = nameRow(system.worstRow, numbering);
  const message = `No operating point after ${iterations} iterations; the worst is ${describeRow(where)}.`;
  return { code: "no_convergence", message, ...where };
}
