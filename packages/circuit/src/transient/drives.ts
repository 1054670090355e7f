import { flag } from "../elements/rules";
import { fail, type Result, succeed } from "../result";
import type { Solver } from "../solver";
import { compileWave, type Piece, refuseWave } from "./compile-wave";
import type { Drive } from "./options";

/** The drives of a run, tied to the elements. */
export interface DriveSet {
  /** First corner of any wave later than `seconds` by more than `gap`. */
  cornerAfter(seconds: number, gap: number): number;
  /** Chooses the formulas that hold around `seconds`, which is no corner, and writes the level ones at once. */
  enter(seconds: number): Result<void>;
  /** Writes what changes within the pieces entered. */
  write(seconds: number): Result<void>;
  /** Longest step that follows all waves. */
  readonly stepSeconds: number;
  /** True when all waves are level between their corners. */
  readonly isLevel: boolean;
}

const done = succeed(undefined);

/** True for a field that takes true and false, which a wave may state as 1 and 0. */
function isFlag(solver: Solver, element: string, field: string): boolean {
  const { position, expanded } = solver.directory;
  const at = position.get(element);
  return at !== undefined && expanded[at].definition.fields[field] === flag;
}

export function createDrives(solver: Solver, drives: readonly Drive[]): Result<DriveSet> {
  for (const { element, field, wave } of drives) {
    const objection = refuseWave(wave);
    if (objection !== undefined) {
      const message = `The ${wave.kind} wave that drives ${field} of "${element}" ${objection}.`;
      return fail("invalid_option", message, { element, field });
    }
  }
  const forms = drives.map(({ wave }) => compileWave(wave));
  const pieces: (Piece | undefined)[] = drives.map(() => undefined);
  const changes: Record<string, number | boolean>[] = drives.map(({ field }) => ({ [field]: 0 }));
  const flags = drives.map(({ element, field }) => isFlag(solver, element, field));
  const set = (i: number, seconds: number): Result<void> => {
    const { element, field } = drives[i];
    const value = pieces[i]?.valueAt(seconds) ?? 0;
    changes[i][field] =
      flags[i] && typeof value === "number" && (value === 0 || value === 1) ? value === 1 : value;
    return solver.set(element, changes[i]);
  };
  return succeed({
    isLevel: drives.every(
      ({ wave }) => wave.kind === "steps" || (wave.kind === "pulse" && !wave.riseSeconds),
    ),
    stepSeconds: Math.min(Number.POSITIVE_INFINITY, ...forms.map((form) => form.stepSeconds)),
    cornerAfter: (seconds, gap) => {
      let first = Number.POSITIVE_INFINITY;
      for (const form of forms) first = Math.min(first, form.cornerAfter(seconds + gap));
      return first;
    },
    enter: (seconds) => {
      for (const [i, form] of forms.entries()) {
        pieces[i] = form.pieceAt(seconds);
        if (!pieces[i]?.isLevel) continue;
        const written = set(i, seconds);
        if (!written.ok) return written;
      }
      return done;
    },
    write: (seconds) => {
      for (let i = 0; i < pieces.length; i++) {
        const piece = pieces[i];
        if (piece === undefined || piece.isLevel) continue;
        const written = set(i, seconds);
        if (!written.ok) return written;
      }
      return done;
    },
  });
}
