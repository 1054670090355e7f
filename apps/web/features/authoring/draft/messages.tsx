"use client";

import { createContext, type ReactNode, useContext } from "react";
import { formatPath, type Path } from "./path";

export interface AuthoringMessage {
  readonly severity: "error" | "warning";
  readonly path: string;
  readonly message: string;
}

const MessagesContext = createContext<readonly AuthoringMessage[]>([]);

export function MessagesProvider({
  messages,
  children,
}: {
  readonly messages: readonly AuthoringMessage[];
  readonly children: ReactNode;
}) {
  return <MessagesContext value={messages}>{children}</MessagesContext>;
}

export const useMessages = (): readonly AuthoringMessage[] => useContext(MessagesContext);

/** Whether a message is about the place itself or something inside it. */
export const isInside = (message: AuthoringMessage, path: string): boolean =>
  message.path === path || message.path.startsWith(`${path}.`) || message.path.startsWith(`${path}[`);

/** What is said about a field; one that holds other fields (`exact`) leaves theirs to them. */
export function useFieldMessage(path: Path, exact = false): string | undefined {
  const messages = useMessages();
  const text = formatPath(path);
  const found = messages.find((message) => (exact ? message.path === text : isInside(message, text)));
  return found === undefined ? undefined : sentence(found.message);
}

/** A message as a sentence of its own. */
export function sentence(message: string): string {
  if (/^Invalid input: expected \w+, received (undefined|null)$/.test(message)) return "Fill this in.";
  const expected = /^Invalid input: expected (\w+), received \w+$/.exec(message)?.[1];
  if (expected !== undefined) return `Write a ${expected}.`;
  return message.charAt(0).toUpperCase() + message.slice(1) + (/[.?]$/.test(message) ? "" : ".");
}
