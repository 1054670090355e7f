/** An expected outcome of an operation, as a value. Our own bugs throw. */
export type Result<Value, Failure extends { code: string }> =
  | { ok: true; value: Value }
  | { ok: false; error: Failure };

export const succeed = <Value>(value: Value): { ok: true; value: Value } => ({ ok: true, value });

export const fail = <Failure extends { code: string }>(error: Failure): { ok: false; error: Failure } => ({
  ok: false,
  error,
});
