import { type Binding, bind } from "./bindings";
import { type BranchPlacement, type BranchTable, createBranchTable } from "./devices/branch";
import {
  type ControlledCurrentPlacement,
  type ControlledCurrentTable,
  createControlledCurrentTable,
} from "./devices/controlled-current";
import { type CurrentSourceTable, createCurrentSourceTable } from "./devices/current-source";
import { createDiodeTable, type DiodeTable } from "./devices/diode";
import { createFilamentTable, type FilamentTable } from "./devices/filament";
import { createOhmicTable, type OhmicTable } from "./devices/ohmic";
import { createRegulatorTable, type RegulatorTable } from "./devices/regulator";
import { placeTwoTerminals } from "./devices/two-terminal";
import { createPatternBuilder, type Pattern } from "./kernel/pattern";
import type { CircuitElement } from "./network";
import type { Numbering } from "./numbering";
import { terminalsOf } from "./validate-element";

/** All devices of a network, sorted by law into typed arrays. */
export interface DeviceTables {
  readonly ohmic: OhmicTable;
  readonly current: CurrentSourceTable;
  readonly branch: BranchTable;
  readonly controlled: ControlledCurrentTable;
  readonly diode: DiodeTable;
  readonly filament: FilamentTable;
  readonly regulator: RegulatorTable;
}

type Pair = readonly [number, number];

/** Sorts the elements into tables, collects the matrix pattern and ties each element to its row, in their order. */
export function buildTables(
  elements: readonly CircuitElement[],
  numbering: Numbering,
): { pattern: Pattern; tables: DeviceTables; bindings: readonly Binding[] } {
  const node = (name: string): number => {
    const index = numbering.indexOf.get(name);
    if (index === undefined) throw new Error(`Node "${name}" was not numbered.`);
    return index;
  };
  const rows = sortIntoRows(elements, numbering, node);
  const { ground } = numbering;
  const builder = createPatternBuilder(numbering.nodeCount, numbering.size);
  const tables: DeviceTables = {
    ohmic: createOhmicTable(placeTwoTerminals(rows.ohmic, builder)),
    current: createCurrentSourceTable(rows.current),
    branch: createBranchTable(rows.branch, ground, builder),
    controlled: createControlledCurrentTable(rows.controlled, ground, builder),
    diode: createDiodeTable(placeTwoTerminals(rows.diode, builder)),
    filament: createFilamentTable(placeTwoTerminals(rows.filament, builder)),
    regulator: createRegulatorTable(rows.regulator, builder),
  };
  const bindings = elements.map((element) => {
    const row = rows.rowOf.get(element.id) ?? -1;
    const binding = bind(element, { tables, row, numbering, seriesRow: rows.seriesRowOf.get(element.id) });
    binding.write(element);
    return binding;
  });
  return { pattern: builder.finish(), tables, bindings };
}

function sortIntoRows(
  elements: readonly CircuitElement[],
  numbering: Numbering,
  node: (name: string) => number,
) {
  const ohmic: Pair[] = [];
  const current: Pair[] = [];
  const branch: BranchPlacement[] = [];
  const controlled: ControlledCurrentPlacement[] = [];
  const diode: Pair[] = [];
  const filament: Pair[] = [];
  const regulator: (readonly [number, number, number])[] = [];
  const rowOf = new Map<string, number>();
  const seriesRowOf = new Map<string, number>();
  const { ground, branchUnknown, junctionNode } = numbering;

  for (const element of elements) {
    const [a, b, c] = terminalsOf(element).map(node);
    const unknown = branchUnknown.get(element.id);
    const control = controlOf(element, numbering, node, ground);
    if (unknown !== undefined) rowOf.set(element.id, branch.push({ a, b, unknown, ...control }) - 1);
    else if (element.kind === "currentSource") rowOf.set(element.id, current.push([a, b]) - 1);
    else if (element.kind === "controlledSource") {
      rowOf.set(element.id, controlled.push({ a, b, ...control }) - 1);
    } else if (element.kind === "diode") {
      const junction = junctionNode.get(element.id);
      if (junction !== undefined) seriesRowOf.set(element.id, ohmic.push([a, junction]) - 1);
      rowOf.set(element.id, diode.push([junction ?? a, b]) - 1);
    } else if (element.kind === "filament") rowOf.set(element.id, filament.push([a, b]) - 1);
    else if (element.kind === "regulator") rowOf.set(element.id, regulator.push([a, b, c]) - 1);
    else rowOf.set(element.id, ohmic.push([a, b]) - 1);
  }
  return { ohmic, current, branch, controlled, diode, filament, regulator, rowOf, seriesRowOf };
}

function controlOf(
  element: CircuitElement,
  numbering: Numbering,
  node: (name: string) => number,
  ground: number,
): Pick<BranchPlacement, "controlA" | "controlB" | "sensed"> {
  const none = { controlA: ground, controlB: ground, sensed: undefined };
  if (element.kind !== "controlledSource") return none;
  if (element.type === "ccvs" || element.type === "cccs") {
    return { ...none, sensed: numbering.branchUnknown.get(element.controlElement ?? "") };
  }
  return {
    controlA: node(element.controlPositive ?? ""),
    controlB: node(element.controlNegative ?? ""),
    sensed: undefined,
  };
}
