import type { FillRole, StrokeRole } from "../geometry";
import type { Pen } from "./stroke";

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

/** The pen of a stroke's role. */
export function penOf(role: StrokeRole, { ink }: ThemeColours): Pen {
  const width = { ink: 1.6, fine: 1, dashed: 1.2, rail: 3.2 }[role];
  return { colour: ink, width, ...(role === "dashed" ? { dash: [5, 4] } : {}) };
}

/** The colour an area is filled with, if it is. */
export function fillOf(role: FillRole, { paper, ink }: ThemeColours): { readonly fill?: string } {
  return role === "none" ? {} : { fill: role === "paper" ? paper : ink };
}
