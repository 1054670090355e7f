import "server-only";
import pino, { type Logger } from "pino";
import { env } from "@/env";

const holder = globalThis as typeof globalThis & { probeworthyLogger?: Logger };

/** One JSON line per event on standard output. Never log bodies: they may hold passwords or answers. */
export function logger(): Logger {
  holder.probeworthyLogger ??= pino({
    level: env().PROBEWORTHY_LOG_LEVEL,
    base: null,
    redact: ["*.password", "*.passwordHash", "*.token", "*.secret"],
  });
  return holder.probeworthyLogger;
}
