import { flowBranches } from "../devices/branch";
import { flowCapacitors } from "../devices/capacitor";
import { flowControlledCurrents } from "../devices/controlled-current";
import { flowCurrentSources } from "../devices/current-source";
import { evaluateDiodes } from "../devices/diode";
import { evaluateFilaments } from "../devices/filament";
import { evaluateLaws } from "../devices/law-table";
import { flowOhmic } from "../devices/ohmic";
import { evaluateRegulators } from "../devices/regulator";
import { evaluateCurves } from "../devices/table";
import type { DeviceTables } from "../tables";
import type { Evaluation } from "./iterate";

/** Lets the devices of one table write what they make of the iterate; answers how many were limited. */
export type Pass = (x: Evaluation, drive: number) => number;

/**
 * One pass for each table that has devices. They are called through this list and not by name so that the compiler
 * makes each of them by itself: inlined together into one function they run at half the speed.
 */
export function listPasses(tables: DeviceTables): readonly Pass[] {
  const unlimited = (count: number, run: (x: Evaluation, drive: number) => void): Pass[] => {
    const pass: Pass = (x, drive) => {
      run(x, drive);
      return 0;
    };
    return count > 0 ? [pass] : [];
  };
  const { ohmic, current, capacitor, branch, controlled, filament, curve, diode, regulator, law } = tables;
  return [
    ...unlimited(ohmic.count, (x, drive) => flowOhmic(ohmic, x, drive)),
    ...unlimited(current.count, (x, drive) => flowCurrentSources(current, x, drive)),
    ...unlimited(capacitor.count, (x) => flowCapacitors(capacitor, x)),
    ...unlimited(branch.count, (x, drive) => flowBranches(branch, x, drive)),
    ...unlimited(controlled.count, (x) => flowControlledCurrents(controlled, x)),
    ...unlimited(filament.count, (x) => evaluateFilaments(filament, x)),
    ...(diode.count > 0 ? [(x: Evaluation) => evaluateDiodes(diode, x)] : []),
    ...(curve.count > 0 ? [(x: Evaluation) => evaluateCurves(curve, x)] : []),
    ...(regulator.count > 0 ? [(x: Evaluation) => evaluateRegulators(regulator, x)] : []),
    ...(law.devices.length > 0 ? [(x: Evaluation) => evaluateLaws(law, x)] : []),
  ];
}
