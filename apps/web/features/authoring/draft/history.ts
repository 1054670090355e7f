/** One state of the work and what the step that led there was. */
interface Step<T> {
  readonly value: T;
  readonly label: string;
}

/** Everything an author did since the page was opened, to go back and forth in. */
export interface History<T> {
  readonly past: readonly Step<T>[];
  readonly present: Step<T>;
  readonly future: readonly Step<T>[];
  /** While this is the key of the next change too, both are one step: the letters typed into one field. */
  readonly open: string | undefined;
}

export interface Change<T> {
  readonly value: T;
  /** In words, for the button that takes it back: `F1, rating`. */
  readonly label: string;
  /** Changes of one key that follow each other are one step. */
  readonly key?: string | undefined;
}

export const startHistory = <T>(value: T): History<T> => ({
  past: [],
  present: { value, label: "" },
  future: [],
  open: undefined,
});

/** Adds a step. A change to nothing new is no step. */
export function record<T>(history: History<T>, { value, label, key }: Change<T>): History<T> {
  if (value === history.present.value) return history;
  if (key !== undefined && key === history.open) {
    return { ...history, present: { value, label }, future: [] };
  }
  return { past: [...history.past, history.present], present: { value, label }, future: [], open: key };
}

/** What follows is a new step even if it is in the same field. */
export const seal = <T>(history: History<T>): History<T> =>
  history.open === undefined ? history : { ...history, open: undefined };

export function undo<T>(history: History<T>): History<T> {
  const before = history.past.at(-1);
  if (before === undefined) return history;
  return {
    past: history.past.slice(0, -1),
    present: before,
    future: [history.present, ...history.future],
    open: undefined,
  };
}

export function redo<T>(history: History<T>): History<T> {
  const [next, ...future] = history.future;
  if (next === undefined) return history;
  return { past: [...history.past, history.present], present: next, future, open: undefined };
}
