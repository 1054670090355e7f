"use client";

import { createContext, type ReactNode, useContext } from "react";
import { type FieldValues, get, useFormState } from "react-hook-form";
import type { ScenarioMessage } from "./builder-view";

const MessagesContext = createContext<readonly ScenarioMessage[]>([]);

export function MessagesProvider({
  messages,
  children,
}: {
  readonly messages: readonly ScenarioMessage[];
  readonly children: ReactNode;
}) {
  return <MessagesContext value={messages}>{children}</MessagesContext>;
}

/**
 * What stands beside a field: its own error once it was left, or what the vehicle says about it. A message about
 * something inside the field (`ohms.from` for `ohms`) stands there too.
 */
export function useFieldMessage(path: string): string | undefined {
  const { errors } = useFormState<FieldValues>();
  const checked = useContext(MessagesContext).find(
    (message) => message.stage === "check" && (message.path === path || message.path.startsWith(`${path}.`)),
  );
  return firstMessage(get(errors, path)) ?? checked?.message;
}

function firstMessage(error: unknown): string | undefined {
  if (typeof error !== "object" || error === null) return undefined;
  if ("message" in error && typeof error.message === "string" && error.message !== "") return error.message;
  for (const inner of Object.values(error)) {
    if (inner instanceof Element) continue;
    const found = firstMessage(inner);
    if (found !== undefined) return found;
  }
  return undefined;
}

/** Goes to the field a message is about: the closest part of the form that carries the path or its beginning. */
export function jumpTo(path: string): void {
  const parts = path.split(".");
  for (let length = parts.length; length > 0; length--) {
    const place = document.querySelector(`[data-path="${CSS.escape(parts.slice(0, length).join("."))}"]`);
    if (place === null) continue;
    place.scrollIntoView({ block: "center" });
    place.querySelector<HTMLElement>("input, select, textarea, button")?.focus({ preventScroll: true });
    return;
  }
}
