"use client";

import { useSyncExternalStore } from "react";

export interface LocalTimeProps {
  /** ISO 8601 with zone. */
  readonly at: string;
}

const options: Intl.DateTimeFormatOptions = { dateStyle: "medium", timeStyle: "short" };
const never = () => () => {};

/** A moment in the reader's own zone. The server does not know it and writes UTC, marked as such. */
export function LocalTime({ at }: LocalTimeProps) {
  const text = useSyncExternalStore(
    never,
    () => new Date(at).toLocaleString("en-GB", options),
    () => `${new Date(at).toLocaleString("en-GB", { ...options, timeZone: "UTC" })} UTC`,
  );
  return <time dateTime={at}>{text}</time>;
}
