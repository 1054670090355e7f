import type { TextRole } from "./geometry";

/** Size in px and mean advance in em of each role's type. IBM Plex Mono advances 0.6 em exactly; Sans about 0.54. */
export const textStyles: Readonly<Record<TextRole, { size: number; advance: number; mono: boolean }>> = {
  designator: { size: 13, advance: 0.6, mono: true },
  title: { size: 12, advance: 0.54, mono: false },
  terminal: { size: 12, advance: 0.6, mono: true },
  function: { size: 11, advance: 0.54, mono: false },
  cavity: { size: 11, advance: 0.6, mono: true },
  rating: { size: 11, advance: 0.6, mono: true },
  zone: { size: 11, advance: 0.6, mono: true },
};

/** Width a text will need, px. An estimate for sans text, exact for mono. */
export function textWidth(text: string, role: TextRole): number {
  const style = textStyles[role];
  return Math.ceil(text.length * style.size * style.advance);
}

/** Breaks a text at spaces into lines of at most `characters`, longer words standing alone. Never an empty list. */
export function wrapText(text: string, characters: number): readonly string[] {
  const lines: string[] = [];
  for (const word of text.split(/\s+/).filter((part) => part !== "")) {
    const last = lines.at(-1);
    if (last !== undefined && last.length + 1 + word.length <= characters) {
      lines[lines.length - 1] = `${last} ${word}`;
    } else lines.push(word);
  }
  return lines.length === 0 ? [""] : lines;
}
