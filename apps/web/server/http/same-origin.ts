import "server-only";

/**
 * Whether a write comes from a page of this server. Browsers send Origin with every write; a script with no browser
 * behind it (curl, a test) sends none and carries no ambient cookies of a victim, so it is let through unless
 * Sec-Fetch-Site says otherwise.
 */
export function isSameOrigin(headers: Headers, publicUrl: string | undefined): boolean {
  const fetchSite = headers.get("sec-fetch-site");
  if (fetchSite !== null && fetchSite !== "same-origin") return false;
  const origin = headers.get("origin");
  if (origin === null) return true;
  if (!URL.canParse(origin)) return false;
  const { host, origin: normalised } = new URL(origin);
  if (publicUrl !== undefined && normalised === new URL(publicUrl).origin) return true;
  return host === headers.get("host");
}
