import "server-only";
import { clearBudget, type RateLimit, returnToBudget, tryFromBudget } from "../http/rate-limit";

/** A whole class signs in from one address, so that budget is wider than a person's. */
const perAccount: RateLimit = { name: "sign_in_account", requests: 10, perSeconds: 15 * 60 };
const perAddress: RateLimit = { name: "sign_in_address", requests: 100, perSeconds: 15 * 60 };

/** Counts a try before it is made, so that many made at once cannot slip past. Answers whether it may be made. */
export async function beginSignIn(email: string, address: string): Promise<boolean> {
  const waits = await Promise.all([tryFromBudget(perAccount, email), tryFromBudget(perAddress, address)]);
  return waits.every((wait) => wait === 0);
}

/** Only failures keep counting. */
export async function noteSuccessfulSignIn(email: string, address: string): Promise<void> {
  await Promise.all([clearBudget(perAccount, email), returnToBudget(perAddress, address)]);
}
