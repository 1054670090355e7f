import { controlledAmps } from "./devices/controlled-current";
import { diodeAmps } from "./devices/diode";
import { filamentAmps } from "./devices/filament";
import { ohmicAmps } from "./devices/ohmic";
import { regulatorAmps } from "./devices/regulator";
import { across, type Evaluation } from "./kernel/iterate";
import type { DeviceTables } from "./tables";

/** Where the currents of each table begin in `readAmps`; `end` is their number. */
export function ampsStarts(tables: DeviceTables) {
  const current = tables.ohmic.count;
  const branch = current + tables.current.count;
  const controlled = branch + tables.branch.count;
  const diode = controlled + tables.controlled.count;
  const filament = diode + tables.diode.count;
  const regulator = filament + tables.filament.count;
  return {
    ohmic: 0,
    current,
    branch,
    controlled,
    diode,
    filament,
    regulator,
    end: regulator + tables.regulator.count,
  };
}

/** The currents of all devices of a solved network, table after table: read at every solve, so without a call each. */
export function readAmps(tables: DeviceTables, x: Evaluation): Float64Array {
  const { ohmic, current, branch, controlled, diode, filament, regulator } = tables;
  const amps = new Float64Array(ampsStarts(tables).end);
  let at = 0;
  for (let i = 0; i < ohmic.count; i++) amps[at++] = ohmicAmps(ohmic, x, i, 1);
  for (let i = 0; i < current.count; i++) amps[at++] = current.amps[i];
  for (let i = 0; i < branch.count; i++) amps[at++] = x.high[branch.unknown[i]] + x.low[branch.unknown[i]];
  for (let i = 0; i < controlled.count; i++) amps[at++] = controlledAmps(controlled, x, i);
  for (let i = 0; i < diode.count; i++) amps[at++] = diodeAmps(diode, i, across(x, diode.a[i], diode.b[i]));
  for (let i = 0; i < filament.count; i++)
    amps[at++] = filamentAmps(filament, i, across(x, filament.a[i], filament.b[i]));
  for (let i = 0; i < regulator.count; i++) amps[at++] = regulatorAmps(regulator, x, i);
  return amps;
}
