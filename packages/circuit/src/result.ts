/** Every expected failure of this package, by kind. Each error names the element or the node it is about. */
export type CircuitErrorCode =
  | "invalid_element"
  | "duplicate_id"
  | "unknown_element"
  | "unknown_node"
  | "missing_ground"
  | "missing_control"
  | "voltage_loop"
  | "open_current_source"
  | "singular"
  | "no_convergence"
  | "invalid_option"
  | "step_too_short"
  | "step_limit"
  | "not_periodic";

export interface CircuitError {
  readonly code: CircuitErrorCode;
  /** One English sentence for a developer or an author; never parsed. */
  readonly message: string;
  readonly element?: string;
  readonly node?: string;
  /** The offending field of the element, when one field is to blame. */
  readonly field?: string;
  /** When it happened, in a transient. */
  readonly seconds?: number;
}

export type Result<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly error: CircuitError };

export const succeed = <T>(value: T): Result<T> => ({ ok: true, value });

export const fail = (
  code: CircuitErrorCode,
  message: string,
  where: { element?: string; node?: string; field?: string; seconds?: number } = {},
): { readonly ok: false; readonly error: CircuitError } => ({
  ok: false,
  error: { code, message, ...where },
});
