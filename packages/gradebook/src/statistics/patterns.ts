import type { Answer, AnswerTable } from "./answers";

/** Answers that several learners share: the fits do the work once for all of them. */
export interface Pattern {
  readonly answers: readonly Answer[];
  readonly count: number;
}

/** The different rows of a table with at least one answer in them, in order of first appearance. */
export function patternsOf(table: AnswerTable): readonly Pattern[] {
  const patterns = new Map<string, { answers: readonly Answer[]; count: number }>();
  for (const answers of table) {
    if (answers.every((answer) => answer === null)) continue;
    const key = answers.map((answer) => answer ?? "-").join("");
    const known = patterns.get(key);
    if (known === undefined) patterns.set(key, { answers, count: 1 });
    else known.count += 1;
  }
  return [...patterns.values()];
}
