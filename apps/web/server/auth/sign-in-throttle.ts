import "server-only";
import { clearBudget, type RateLimit, secondsUntilAllowed, takeFromBudget } from "../http/rate-limit";

/** Only failures count. A whole class signs in from one address, so that budget is wider than a person's. */
const perAccount: RateLimit = { name: "sign_in_account", requests: 10, perSeconds: 15 * 60 };
const perAddress: RateLimit = { name: "sign_in_address", requests: 100, perSeconds: 15 * 60 };

/** Seconds to wait before the next try may be made; 0 when it may be made now. */
export async function secondsUntilSignInAllowed(email: string, address: string): Promise<number> {
  return Math.max(
    await secondsUntilAllowed(perAccount, email),
    await secondsUntilAllowed(perAddress, address),
  );
}

export async function noteFailedSignIn(email: string, address: string): Promise<void> {
  await Promise.all([takeFromBudget(perAccount, email), takeFromBudget(perAddress, address)]);
}

export async function noteSuccessfulSignIn(email: string): Promise<void> {
  await clearBudget(perAccount, email);
}
