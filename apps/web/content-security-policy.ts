/**
 * The page policy. Scripts run only with this request's nonce ('strict-dynamic' lets Next.js load its own chunks).
 * Styles may be inline: positioned parts (leads, popovers) set style attributes and the scroll lock of dialogs writes
 * a style element; neither can run code.
 */
export function contentSecurityPolicy(options: {
  readonly nonce: string;
  readonly development: boolean;
  readonly formTargets: readonly string[];
}): string {
  const script = ["'self'", `'nonce-${options.nonce}'`, "'strict-dynamic'"];
  if (options.development) script.push("'unsafe-eval'");
  return [
    "default-src 'self'",
    `script-src ${script.join(" ")}`,
    "style-src 'self' 'unsafe-inline'",
    "img-src 'self' data: blob:",
    "font-src 'self'",
    `connect-src 'self'${options.development ? " ws: wss:" : ""}`,
    "object-src 'none'",
    "base-uri 'none'",
    `form-action ${["'self'", ...options.formTargets].join(" ")}`,
    "frame-ancestors 'none'",
  ].join("; ");
}
