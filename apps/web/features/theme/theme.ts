/** The colours a person chose. It lives in a cookie, so the server already draws the page in it: nothing flashes. */
export const themes = ["system", "light", "dark"] as const;
export type Theme = (typeof themes)[number];

export const themeCookie = "probeworthy-theme";

export function parseTheme(value: string | undefined): Theme {
  return themes.find((theme) => theme === value) ?? "system";
}
