import type { IndexEntry, PaperIndex } from "./papers-view";

/** How well an entry answers; 0 is not at all. A designator beats a title, the beginning of a word its middle. */
function score(entry: IndexEntry, word: string): number {
  const id = entry.id.toLowerCase();
  if (id === word) return 100;
  if (id.startsWith(word)) return 60;
  const rest = `${entry.title} ${entry.place ?? ""} ${entry.words}`.toLowerCase();
  const found = rest.indexOf(word);
  if (found < 0) return 0;
  return /[a-z0-9]/.test(rest[found - 1] ?? " ") ? 10 : 30;
}

/** Entries that answer to every word of what is asked, the best first; by designator, title, colour, terminal or place. */
export function searchPapers(index: PaperIndex, asked: string, limit = 12): readonly IndexEntry[] {
  const words = asked.toLowerCase().split(/\s+/).filter(Boolean);
  if (words.length === 0) return [];
  return index.entries
    .map((entry) => {
      const scores = words.map((word) => score(entry, word));
      return { entry, total: scores.includes(0) ? 0 : scores.reduce((sum, one) => sum + one, 0) };
    })
    .filter(({ total, entry }) => total > 0 && entry.systems.length > 0)
    .sort((one, other) => other.total - one.total)
    .slice(0, limit)
    .map(({ entry }) => entry);
}
