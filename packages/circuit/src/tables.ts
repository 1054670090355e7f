import { type Binding, bind } from "./bindings";
import { type BranchPlacement, type BranchTable, createBranchTable } from "./devices/branch";
import { type CapacitorTable, createCapacitorTable } from "./devices/capacitor";
import {
  type ControlledCurrentPlacement,
  type ControlledCurrentTable,
  createControlledCurrentTable,
} from "./devices/controlled-current";
import { type CurrentSourceTable, createCurrentSourceTable } from "./devices/current-source";
import { createDiodeTable, type DiodeTable } from "./devices/diode";
import { createFilamentTable, type FilamentTable } from "./devices/filament";
import { type LawPlacement, type LawTable, placeLaw, sizeOf } from "./devices/law-table";
import { createOhmicTable, type OhmicTable } from "./devices/ohmic";
import { createRegulatorTable, type RegulatorTable, type Triple } from "./devices/regulator";
import { type CurveTable, createCurveTable } from "./devices/table";
import { type Builders, type Pair, placeEdges, placeTwoTerminals } from "./devices/two-terminal";
import type { Part } from "./elements/definition";
import { createFlowBuilder, type Flows } from "./kernel/flows";
import { createPatternBuilder, type Pattern } from "./kernel/pattern";
import type { Numbering } from "./numbering";

/** All devices of a network, sorted by law into typed arrays. */
export interface DeviceTables {
  /** Conductance of every edge in the Jacobian: the columns of ohmic, diode, filament and curve, and a 0 at the end. */
  readonly siemens: Float64Array;
  readonly ohmic: OhmicTable;
  readonly current: CurrentSourceTable;
  readonly capacitor: CapacitorTable;
  readonly branch: BranchTable;
  readonly controlled: ControlledCurrentTable;
  readonly diode: DiodeTable;
  readonly filament: FilamentTable;
  readonly curve: CurveTable;
  readonly regulator: RegulatorTable;
  readonly law: LawTable;
  /** Number of slots for charges and fluxes. */
  readonly slots: number;
  /** True when no device has a curve. */
  readonly isLinear: boolean;
}

/** Sorts the parts into tables, collects pattern and flows, and ties each part to its row, in their order. */
export function buildTables(
  parts: readonly Part[],
  numbering: Numbering,
): { finishPattern: () => Pattern; flows: Flows; tables: DeviceTables; bindings: readonly Binding[] } {
  const rows = sortIntoRows(parts, numbering);
  const { ground } = numbering;
  const builders: Builders = {
    pattern: createPatternBuilder(numbering.nodeCount, numbering.size),
    flows: createFlowBuilder(),
    largest: numbering.size,
  };
  const branchSlot = rows.capacitor.length;
  const lawSlot = branchSlot + rows.branch.length;
  let slots = lawSlot;
  const laws: LawPlacement[] = rows.law.map((placement) => {
    const slot = slots;
    slots += sizeOf(placement.law);
    return { ...placement, slot };
  });
  // Edges first: their flows and their conductances have the same numbers.
  const edgeRows = [rows.ohmic, rows.diode, rows.filament, rows.curve];
  const siemens = new Float64Array(edgeRows.reduce((sum, list) => sum + list.length, 1));
  const [ohmic, diode, filament, curve] = edgeRows.map((list) => {
    const terminals = placeEdges(list, builders);
    return { terminals, column: siemens.subarray(terminals.flow, terminals.flow + terminals.count) };
  });
  const tables: DeviceTables = {
    siemens,
    ohmic: createOhmicTable(ohmic.terminals, ohmic.column),
    diode: createDiodeTable(diode.terminals, diode.column),
    filament: createFilamentTable(filament.terminals, filament.column),
    curve: createCurveTable(curve.terminals, curve.column),
    current: createCurrentSourceTable(rows.current, builders.flows),
    capacitor: createCapacitorTable(placeTwoTerminals(rows.capacitor, builders), builders.pattern, 0),
    branch: createBranchTable(rows.branch, ground, builders, branchSlot),
    controlled: createControlledCurrentTable(rows.controlled, ground, builders),
    regulator: createRegulatorTable(rows.regulator, builders),
    law: { devices: laws.map((placement) => placeLaw(placement, builders)) },
    slots,
    isLinear:
      rows.diode.length +
        rows.filament.length +
        rows.curve.length +
        rows.regulator.length +
        rows.law.length ===
      0,
  };
  const bindings = parts.map((part, i) => {
    const binding = bind(part, tables, rows.rowOf[i], numbering.unknown[i] >= 0, numbering.nodes[i]);
    binding.write(part);
    return binding;
  });
  return {
    finishPattern: builders.pattern.finish,
    flows: builders.flows.finish(numbering.size),
    tables,
    bindings,
  };
}

function sortIntoRows(parts: readonly Part[], numbering: Numbering) {
  const ohmic: Pair[] = [];
  const current: Pair[] = [];
  const capacitor: Pair[] = [];
  const branch: BranchPlacement[] = [];
  const controlled: ControlledCurrentPlacement[] = [];
  const diode: Pair[] = [];
  const filament: Pair[] = [];
  const curve: Pair[] = [];
  const regulator: Triple[] = [];
  const law: Omit<LawPlacement, "slot">[] = [];

  const place = (part: Part, i: number): number => {
    const nodes = numbering.nodes[i];
    const [a, b, c] = nodes;
    const unknown = numbering.unknown[i];
    if (part.kind === "device") {
      const unknowns = part.law.internals.map((_, k) => unknown + k);
      return law.push({ law: part.law, nodes, unknowns }) - 1;
    }
    if (unknown >= 0) return branch.push({ a, b, unknown, ...controlOf(part, numbering) }) - 1;
    switch (part.kind) {
      case "currentSource":
        return current.push([a, b]) - 1;
      case "capacitor":
        return capacitor.push([a, b]) - 1;
      case "controlledSource":
        return controlled.push({ a, b, ...controlOf(part, numbering) }) - 1;
      case "diode":
        return diode.push([a, b]) - 1;
      case "filament":
        return filament.push([a, b]) - 1;
      case "curve":
        return curve.push([a, b]) - 1;
      case "regulator":
        return regulator.push([a, b, c]) - 1;
      default:
        return ohmic.push([a, b]) - 1;
    }
  };
  const rowOf = Int32Array.from(parts, place);
  return { ohmic, current, capacitor, branch, controlled, diode, filament, curve, regulator, law, rowOf };
}

function controlOf(
  part: Part,
  numbering: Numbering,
): Pick<BranchPlacement, "controlA" | "controlB" | "sensed"> {
  const { ground, indexOf, branchOf } = numbering;
  if (part.kind !== "controlledSource") return { controlA: ground, controlB: ground, sensed: undefined };
  const node = (name: string | undefined): number => indexOf.get(name ?? "") ?? ground;
  if (part.type === "ccvs" || part.type === "cccs")
    return { controlA: ground, controlB: ground, sensed: branchOf.get(part.controlElement ?? "") };
  return { controlA: node(part.controlPositive), controlB: node(part.controlNegative), sensed: undefined };
}
