import "server-only";
import { randomInt } from "node:crypto";

// No letters that are mistaken for each other when read from paper: 0 O 1 l I.
const letters = "abcdefghjkmnpqrstuvwxyz23456789";

/** A password to hand over on paper: 16 characters of 31, about 79 bits, in groups of four. */
export function makeFirstPassword(): string {
  const group = () => Array.from({ length: 4 }, () => letters[randomInt(letters.length)]).join("");
  return [group(), group(), group(), group()].join("-");
}
