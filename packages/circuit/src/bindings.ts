import { setDiode } from "./devices/diode";
import { setFilament } from "./devices/filament";
import { refreshOhmic } from "./devices/ohmic";
import { setRegulator } from "./devices/regulator";
import { setCurve } from "./devices/table";
import type { Part } from "./elements/definition";
import { ohmsOf } from "./expansion";
import type { Evaluation } from "./kernel/iterate";
import type { DeviceTables } from "./tables";

/** One part's tie to the device tables. */
export interface Binding {
  /** Writes the part's numbers into its table. True when that has changed the Jacobian. */
  write(part: Part): boolean;
  /** True for a part whose conductance is gathered and not stamped. */
  readonly isEdge?: boolean;
  /** Brings flow and residual up to date at an unchanged iterate; kinds that leave this out need a whole evaluation. */
  readonly refresh?: (x: Evaluation) => void;
  /** Rows of the Jacobian that then have changed: those of its nodes and of its own unknown. */
  readonly rows: readonly number[];
  /** Its flow, with the sign that CircuitElement's kinds define, and how many make up its current (2 for a branch). */
  readonly flow: number;
  readonly flowCount: number;
}

const emfOf = (part: Part): number => (part.kind === "voltageSource" ? part.volts : 0);

/** Writes one number; true when it is another than before. */
function put(column: Float64Array, row: number, value: number): boolean {
  if (column[row] === value) return false;
  column[row] = value;
  return true;
}

export function bind(
  part: Part,
  tables: DeviceTables,
  row: number,
  isBranch: boolean,
  nodes: readonly number[],
): Binding {
  if (part.kind === "device") {
    const device = tables.law.devices[row];
    return {
      write: (p) => {
        if (p.kind === "device") device.parameters = p.parameters;
        return false;
      },
      rows: nodes,
      flow: device.flow,
      flowCount: 1,
    };
  }
  if (isBranch) {
    const { branch } = tables;
    return {
      write: (p) => {
        branch.emf[row] = emfOf(p);
        const ohms = put(branch.ohms, row, ohmsOf(p) ?? 0);
        const henries = put(branch.henries, row, p.kind === "inductor" ? p.henries : 0);
        const gain = put(branch.gain, row, p.kind === "controlledSource" ? p.gain : 0);
        return ohms || henries || gain;
      },
      rows: [branch.unknown[row]],
      flow: branch.flow + 2 * row,
      flowCount: 2,
    };
  }
  const at = (table: { readonly flow: number }, write: Binding["write"]): Binding => ({
    write,
    rows: nodes,
    flow: table.flow + row,
    flowCount: 1,
  });
  switch (part.kind) {
    case "resistor":
    case "switch":
    case "voltageSource":
      return {
        ...at(tables.ohmic, (p) => {
          tables.ohmic.emf[row] = emfOf(p);
          return put(tables.ohmic.siemens, row, 1 / (ohmsOf(p) ?? Number.NaN));
        }),
        isEdge: true,
        refresh: (x) => refreshOhmic(tables.ohmic, x, row),
      };
    case "currentSource":
      return at(tables.current, (p) => {
        if (p.kind === "currentSource") tables.current.amps[row] = p.amps;
        return false;
      });
    case "capacitor":
      return at(
        tables.capacitor,
        (p) => p.kind === "capacitor" && put(tables.capacitor.farads, row, p.farads),
      );
    case "diode":
      return at(tables.diode, (p) => {
        if (p.kind === "diode") setDiode(tables.diode, row, p);
        return false;
      });
    case "filament":
      return at(tables.filament, (p) => {
        if (p.kind === "filament") setFilament(tables.filament, row, p);
        return false;
      });
    case "curve":
      return at(tables.curve, (p) => {
        if (p.kind === "curve") setCurve(tables.curve, row, p);
        return false;
      });
    case "regulator":
      return {
        ...at(tables.regulator, (p) => {
          if (p.kind === "regulator") setRegulator(tables.regulator, row, p);
          return false;
        }),
        flow: tables.regulator.flow + 3 * row,
      };
    case "controlledSource":
      return at(
        tables.controlled,
        (p) => p.kind === "controlledSource" && put(tables.controlled.gain, row, p.gain),
      );
    case "inductor":
      throw new Error("An inductor is a branch.");
  }
}
