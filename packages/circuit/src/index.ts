import { prepareCircuit as prepare, operatingPoint as solveOnce } from "./prepare-circuit";
import type { operatingPoint as OperatingPointFunction, prepareCircuit as PrepareCircuit } from "./public";

export type { Circuit, OperatingPoint, SolveOptions, StartingPoint } from "./circuit";
export type * from "./network";
export type { CircuitError, CircuitErrorCode, Result } from "./result";

// Typed by the declaration that importers see, so that the two cannot drift apart.
export const prepareCircuit: typeof PrepareCircuit = prepare;
export const operatingPoint: typeof OperatingPointFunction = solveOnce;
