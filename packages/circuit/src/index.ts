export * from "./network";
export { type Circuit, operatingPoint, prepareCircuit } from "./prepare-circuit";
export type { OperatingPoint } from "./read-operating-point";
export type { CircuitError, CircuitErrorCode, Result } from "./result";
export type { SolveOptions } from "./solve";
