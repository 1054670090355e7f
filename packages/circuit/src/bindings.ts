import { controlledAmps } from "./devices/controlled-current";
import { diodeAmps, setDiode } from "./devices/diode";
import { filamentAmps, setFilament } from "./devices/filament";
import { ohmicAmps } from "./devices/ohmic";
import { regulatorAmps, setRegulator } from "./devices/regulator";
import { across, type Evaluation } from "./kernel/iterate";
import type { CircuitElement } from "./network";
import type { Numbering } from "./numbering";
import type { DeviceTables } from "./tables";

/** One element's tie to the device tables. */
export interface Binding {
  /** Writes the element's numbers into its table. */
  write(element: CircuitElement): void;
  /** Its current, as CircuitElement's kinds define the sign. */
  amps(x: Evaluation): number;
}

/** Ohms of anything that obeys Ohm's law around an EMF; undefined otherwise. */
export function ohmsOf(element: CircuitElement): number | undefined {
  if (element.kind === "resistor" || element.kind === "voltageSource") return element.ohms;
  if (element.kind !== "switch") return undefined;
  return element.closed ? (element.closedOhms ?? 1e-3) : (element.openOhms ?? 1e12);
}

const emfOf = (element: CircuitElement): number => (element.kind === "voltageSource" ? element.volts : 0);

/** What a binding needs besides its element: the tables and the element's row in them. */
interface Slot {
  readonly tables: DeviceTables;
  readonly row: number;
  readonly numbering: Numbering;
  /** Row of the series resistance of a diode in the ohmic table. */
  readonly seriesRow: number | undefined;
}

export function bind(element: CircuitElement, slot: Slot): Binding {
  const { tables, row, numbering, seriesRow } = slot;
  const unknown = numbering.branchUnknown.get(element.id);
  if (unknown !== undefined) {
    return {
      write: (e) => {
        tables.branch.ohms[row] = ohmsOf(e) ?? 0;
        tables.branch.emf[row] = emfOf(e);
        tables.branch.gain[row] = e.kind === "controlledSource" ? e.gain : 0;
      },
      amps: (x) => x.high[unknown] + x.low[unknown],
    };
  }
  switch (element.kind) {
    case "resistor":
    case "switch":
    case "voltageSource":
      return {
        write: (e) => {
          tables.ohmic.siemens[row] = 1 / (ohmsOf(e) ?? Number.NaN);
          tables.ohmic.emf[row] = emfOf(e);
        },
        amps: (x) => ohmicAmps(tables.ohmic, x, row, 1),
      };
    case "currentSource":
      return {
        write: (e) => {
          if (e.kind === "currentSource") tables.current.amps[row] = e.amps;
        },
        amps: () => tables.current.amps[row],
      };
    case "diode":
      return {
        write: (e) => {
          if (e.kind !== "diode") return;
          setDiode(tables.diode, row, e);
          if (seriesRow !== undefined) tables.ohmic.siemens[seriesRow] = 1 / (e.seriesOhms ?? Number.NaN);
        },
        amps: (x) => diodeAmps(tables.diode, row, across(x, tables.diode.a[row], tables.diode.b[row])),
      };
    case "filament":
      return {
        write: (e) => {
          if (e.kind === "filament") setFilament(tables.filament, row, e);
        },
        amps: (x) => {
          const { a, b } = tables.filament;
          return filamentAmps(tables.filament, row, across(x, a[row], b[row]));
        },
      };
    case "regulator":
      return {
        write: (e) => {
          if (e.kind === "regulator") setRegulator(tables.regulator, row, e);
        },
        amps: (x) => regulatorAmps(tables.regulator, x, row),
      };
    case "controlledSource":
      return {
        write: (e) => {
          if (e.kind === "controlledSource") tables.controlled.gain[row] = e.gain;
        },
        amps: (x) => controlledAmps(tables.controlled, x, row),
      };
  }
}
