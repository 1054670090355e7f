/**
 * Where a person may be sent after signing in: a path on this server and nothing else. Absolute addresses,
 * protocol-relative ones ("//elsewhere"), backslash tricks, control characters and the sign-in pages themselves
 * fall back to the start page.
 */
export function safeReturnPath(candidate: unknown): string {
  if (typeof candidate !== "string" || !candidate.startsWith("/")) return "/";
  if ([...candidate].some((character) => character === "\\" || character < " ")) return "/";
  // A made-up origin: whatever the parser does with the text, it must not leave that origin.
  const base = "http://same.invalid";
  if (!URL.canParse(candidate, base)) return "/";
  const url = new URL(candidate, base);
  if (url.origin !== base || url.pathname.startsWith("//")) return "/";
  if (/^\/(sign-in|sign-out|api)(\/|$)/.test(url.pathname)) return "/";
  return url.pathname + url.search + url.hash;
}
