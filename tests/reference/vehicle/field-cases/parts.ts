import type { Component, ConditionDefinition, Connector } from "@probeworthy/vehicle";
import { plug } from "../rig";

export const choice = (name: string, ...values: readonly string[]): ConditionDefinition => ({
  kind: "choice",
  name,
  title: name,
  options: values.map((value) => ({ value, title: value })),
  initial: values[0] ?? "",
});

type Module = Extract<Component, { kind: "module" }>;

/** A control module with supply 30, ground 31 and the terminals named, and a plug X<number> with all of them in order. */
export function module(id: string, terminals: readonly string[], rest: Partial<Module> = {}): Module {
  return {
    kind: "module",
    id,
    title: `Control module ${id}`,
    terminals: ["30", "31", ...terminals].map((name) => ({ name, function: name })),
    ground: "31",
    internalGroundOhms: 0.0005,
    supply: { terminal: "30", wakeVolts: 8, dropoutVolts: 6, quiescentAmps: 0.0001, runningAmps: 0.1 },
    signals: [],
    ...rest,
  };
}

export const modulePlug = (id: string, part: Module): Connector =>
  plug(
    id,
    part.id,
    part.terminals.map(({ name }) => name),
  );

/** A diagnostic socket X9 for the scan tool. */
export const socket: Component = {
  kind: "passive",
  id: "X9",
  title: "Diagnostic socket",
  terminals: ["16", "4", "6", "14"],
  diagnosticSocket: { supply: "16", ground: "4", canHigh: "6", canLow: "14" },
};

export const op = (name: string, ...args: readonly unknown[]) => ({ op: name, args }) as never;
