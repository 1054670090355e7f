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

const schemaWords: readonly (readonly [RegExp, (found: RegExpExecArray) => string])[] = [
  [/^Invalid input: expected \w+, received (?:undefined|null)$/, () => "Fill this in."],
  [/^Invalid input: expected (\w+), received \w+$/, ([, kind]) => `Write a ${kind}.`],
  [/^Too small: expected array/, () => "Add at least one."],
  [/^Too small: expected string to have >=1 /, () => "Fill this in."],
  [/^Too small: expected number to be >=(\S+)$/, ([, least]) => `At least ${least}.`],
  [/^Too small: expected number to be >(\S+)$/, ([, least]) => `More than ${least}.`],
  [/^Too big: expected number to be <=?(\S+)$/, ([, most]) => `At most ${most}.`],
  [
    /^Invalid option: expected one of (.*)$/,
    ([, options]) => `Choose one of ${options?.replaceAll("|", ", ")}.`,
  ],
  [/^Unrecognized keys?: (.*)$/, ([, keys]) => `${keys} is not known here.`],
];

/** A message as a sentence of its own; the schema's own words become those of the shop. */
export function sentence(message: string): string {
  for (const [pattern, words] of schemaWords) {
    const found = pattern.exec(message);
    if (found !== null) return words(found);
  }
  return message.charAt(0).toUpperCase() + message.slice(1) + (/[.?]$/.test(message) ? "" : ".");
}
