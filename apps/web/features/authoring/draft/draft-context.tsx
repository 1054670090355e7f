"use client";

import { createContext, type ReactNode, useCallback, useContext, useMemo, useReducer } from "react";
import type { Draft } from "../fields/new-record";
import { type History, record, redo, seal, startHistory, undo } from "./history";
import { formatPath, type Path, setAt } from "./path";

type Action =
  | {
      readonly kind: "change";
      readonly edit: (draft: Draft) => Draft;
      readonly label: string;
      readonly key?: string;
    }
  | { readonly kind: "seal" | "undo" | "redo" };

function reduce(history: History<Draft>, action: Action): History<Draft> {
  switch (action.kind) {
    case "change":
      return record(history, {
        value: action.edit(history.present.value),
        label: action.label,
        key: action.key,
      });
    case "seal":
      return seal(history);
    case "undo":
      return undo(history);
    case "redo":
      return redo(history);
  }
}

export interface DraftActions {
  /** Writes a value; letters typed into one place are one step until `seal`. */
  readonly write: (path: Path, value: unknown, label: string) => void;
  /** Any other change, as one step. */
  readonly edit: (change: (draft: Draft) => Draft, label: string) => void;
  readonly seal: () => void;
  readonly undo: () => void;
  readonly redo: () => void;
}

const DraftContext = createContext<Draft>({});
const ActionsContext = createContext<DraftActions | undefined>(undefined);

export function useDraftHistory(initial: Draft) {
  const [history, dispatch] = useReducer(reduce, initial, startHistory);
  const write = useCallback((path: Path, value: unknown, label: string) => {
    dispatch({ kind: "change", edit: (draft) => setAt(draft, path, value), label, key: formatPath(path) });
  }, []);
  const edit = useCallback((change: (draft: Draft) => Draft, label: string) => {
    dispatch({ kind: "change", edit: change, label });
  }, []);
  const actions = useMemo<DraftActions>(
    () => ({
      write,
      edit,
      seal: () => dispatch({ kind: "seal" }),
      undo: () => dispatch({ kind: "undo" }),
      redo: () => dispatch({ kind: "redo" }),
    }),
    [write, edit],
  );
  return { history, actions };
}

export function DraftProvider({
  draft,
  actions,
  children,
}: {
  readonly draft: Draft;
  readonly actions: DraftActions;
  readonly children: ReactNode;
}) {
  return (
    <ActionsContext value={actions}>
      <DraftContext value={draft}>{children}</DraftContext>
    </ActionsContext>
  );
}

/** The draft as it stands. Reading it draws the reader again with every change. */
export const useDraft = (): Draft => useContext(DraftContext);

export function useDraftActions(): DraftActions {
  const actions = useContext(ActionsContext);
  if (actions === undefined) throw new Error("the workspace has no draft around this part");
  return actions;
}
