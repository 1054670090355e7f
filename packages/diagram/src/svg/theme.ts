import type { FillRole, StrokeRole } from "../geometry";

export type SvgTheme = "light" | "dark";

export interface ThemeColours {
  readonly paper: string;
  readonly ink: string;
  readonly hairline: string;
  readonly quiet: string;
}

export const themes: Readonly<Record<SvgTheme, ThemeColours>> = {
  light: { paper: "#FAF7F0", ink: "#1F2A37", hairline: "#D8D0C2", quiet: "#4F5966" },
  dark: { paper: "#12171D", ink: "#E9E4D8", hairline: "#2B333C", quiet: "#B4B0A6" },
};

/** Attributes of a stroke. */
export function strokeAttributes(role: StrokeRole, { ink }: ThemeColours): string {
  const width = { ink: 1.6, fine: 1, dashed: 1.2, rail: 3.2 }[role];
  return `stroke="${ink}" stroke-width="${width}"${role === "dashed" ? ' stroke-dasharray="5 4"' : ""}`;
}

export function fillAttribute(role: FillRole, { paper, ink }: ThemeColours): string {
  return `fill="${{ none: "none", paper, ink }[role]}"`;
}
