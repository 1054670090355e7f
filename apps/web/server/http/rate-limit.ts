import "server-only";
import { RateLimiterMemory, RateLimiterRes } from "rate-limiter-flexible";
import { problem } from "./problem";

export interface RateLimit {
  /** One budget is shared by everything with the same name. */
  readonly name: string;
  readonly requests: number;
  readonly perSeconds: number;
}

const holder = globalThis as typeof globalThis & { probeworthyRateLimiters?: Map<string, RateLimiterMemory> };

/** Budgets live in this process: with several web instances each keeps its own count. */
function limiterFor(limit: RateLimit): RateLimiterMemory {
  holder.probeworthyRateLimiters ??= new Map();
  const known = holder.probeworthyRateLimiters.get(limit.name);
  if (known !== undefined && known.points === limit.requests && known.duration === limit.perSeconds)
    return known;
  const created = new RateLimiterMemory({
    keyPrefix: limit.name,
    points: limit.requests,
    duration: limit.perSeconds,
  });
  holder.probeworthyRateLimiters.set(limit.name, created);
  return created;
}

/** Takes one from the budget of `key`. @throws ProblemError `rate_limited` with Retry-After when it is used up. */
export async function takeFromBudget(limit: RateLimit, key: string): Promise<void> {
  try {
    await limiterFor(limit).consume(key);
  } catch (refusal) {
    if (refusal instanceof RateLimiterRes) throw rateLimited(refusal.msBeforeNext);
    throw refusal;
  }
}

/** Seconds until `key` may try again; 0 when it may now. Takes nothing from the budget. */
export async function secondsUntilAllowed(limit: RateLimit, key: string): Promise<number> {
  const state = await limiterFor(limit).get(key);
  if (state === null || state.consumedPoints < limit.requests) return 0;
  return Math.ceil(state.msBeforeNext / 1000);
}

export async function clearBudget(limit: RateLimit, key: string): Promise<void> {
  await limiterFor(limit).delete(key);
}

function rateLimited(millisecondsToWait: number) {
  const seconds = Math.max(1, Math.ceil(millisecondsToWait / 1000));
  return problem("rate_limited", {
    detail: `Try again in ${seconds} ${seconds === 1 ? "second" : "seconds"}.`,
    headers: { "Retry-After": String(seconds) },
  });
}
