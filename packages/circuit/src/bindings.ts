import { setDiode } from "./devices/diode";
import { setFilament } from "./devices/filament";
import { setRegulator } from "./devices/regulator";
import type { CircuitElement } from "./network";
import type { Numbering } from "./numbering";
import { ampsStarts } from "./read-amps";
import type { DeviceTables } from "./tables";

/** One element's tie to the device tables. */
export interface Binding {
  /** Writes the element's numbers into its table. */
  write(element: CircuitElement): void;
  /** Where its current lies among those of `readAmps`, with the sign that CircuitElement's kinds define. */
  readonly ampsAt: number;
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
  const starts = ampsStarts(tables);
  if (numbering.branchUnknown.has(element.id)) {
    return {
      write: (e) => {
        tables.branch.ohms[row] = ohmsOf(e) ?? 0;
        tables.branch.emf[row] = emfOf(e);
        tables.branch.gain[row] = e.kind === "controlledSource" ? e.gain : 0;
      },
      ampsAt: starts.branch + row,
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
        ampsAt: starts.ohmic + row,
      };
    case "currentSource":
      return {
        write: (e) => {
          if (e.kind === "currentSource") tables.current.amps[row] = e.amps;
        },
        ampsAt: starts.current + row,
      };
    case "diode":
      return {
        write: (e) => {
          if (e.kind !== "diode") return;
          setDiode(tables.diode, row, e);
          if (seriesRow !== undefined) tables.ohmic.siemens[seriesRow] = 1 / (e.seriesOhms ?? Number.NaN);
        },
        ampsAt: starts.diode + row,
      };
    case "filament":
      return {
        write: (e) => {
          if (e.kind === "filament") setFilament(tables.filament, row, e);
        },
        ampsAt: starts.filament + row,
      };
    case "regulator":
      return {
        write: (e) => {
          if (e.kind === "regulator") setRegulator(tables.regulator, row, e);
        },
        ampsAt: starts.regulator + row,
      };
    case "controlledSource":
      return {
        write: (e) => {
          if (e.kind === "controlledSource") tables.controlled.gain[row] = e.gain;
        },
        ampsAt: starts.controlled + row,
      };
  }
}
