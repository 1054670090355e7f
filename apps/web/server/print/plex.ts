import "server-only";
import { existsSync } from "node:fs";
import { readFile } from "node:fs/promises";
import { join } from "node:path";

export const plexFamilies = { mono: "IBM Plex Mono", sans: "IBM Plex Sans" } as const;

export type PlexFamily = keyof typeof plexFamilies;
export type PlexWeight = 400 | 600;
/** The characters a file has: Latin with the usual signs, or Greek (Ω), which only the sans has. */
export type PlexPart = "latin" | "greek";

/** The product runs in its own folder, tests run in the repository's. */
const packagesFolder = () => {
  const own = join(process.cwd(), "node_modules", "@fontsource");
  return existsSync(own) ? own : join(process.cwd(), "apps", "web", "node_modules", "@fontsource");
};

const known = new Map<string, Promise<Buffer>>();

/** A file of the type the whole product is set in, from its package; read once. */
export function readPlex(
  family: PlexFamily,
  weight: PlexWeight,
  part: PlexPart,
  format: "woff" | "woff2",
): Promise<Buffer> {
  const name = `ibm-plex-${family}`;
  const file = `${name}-${part}-${weight}-normal.${format}`;
  const read = known.get(file) ?? readFile(join(packagesFolder(), name, "files", file));
  known.set(file, read);
  // A file that could not be read is looked for again.
  read.catch(() => known.delete(file));
  return read;
}
