/** How far the readings carry the cause that was named. Several can be left that nobody could have told apart. */
export function proofWords(proven: boolean, left: number, weighed: number): string {
  if (!proven) return `The readings leave ${left} of ${weighed} causes standing: they do not prove it.`;
  if (left <= 1) return "The readings prove it: nothing else is left.";
  return "The readings prove it as far as can be: what else is left looks the same at every point that can be reached.";
}
