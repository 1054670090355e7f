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
  const wait = await tryFromBudget(limit, key);
  if (wait > 0) throw rateLimited(wait);
}

/** Takes one from the budget of `key`. Answers 0, or the seconds to wait when it is used up. */
export async function tryFromBudget(limit: RateLimit, key: string): Promise<number> {
  try {
    await limiterFor(limit).consume(key);
    return 0;
  } catch (refusal) {
    if (refusal instanceof RateLimiterRes) return Math.max(1, Math.ceil(refusal.msBeforeNext / 1000));
    throw refusal;
  }
}

/** Gives one back that turned out not to count. */
export async function returnToBudget(limit: RateLimit, key: string): Promise<void> {
  await limiterFor(limit).reward(key);
}

export async function clearBudget(limit: RateLimit, key: string): Promise<void> {
  await limiterFor(limit).delete(key);
}

function rateLimited(seconds: number) {
  return problem("rate_limited", {
    detail: `Try again in ${seconds} ${seconds === 1 ? "second" : "seconds"}.`,
    headers: { "Retry-After": String(seconds) },
  });
}
