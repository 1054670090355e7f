/**
 * The nearest proxy's word for who is calling; Next.js fills the header from the socket when there is no proxy. Without
 * a proxy a caller can write it himself, so a budget that must hold is kept per account, not per address.
 */
export function remoteAddress(headers: Headers): string {
  return headers.get("x-forwarded-for")?.split(",").at(-1)?.trim() ?? "unknown";
}
