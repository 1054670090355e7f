import { readdirSync, readFileSync } from "node:fs";
import { dirname, join, relative, resolve } from "node:path";
import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";
import { z } from "zod";

// The layout engine weighs more than the whole product and runs on the server. What a browser loads starts at files
// with "use client"; from there nothing may lead to the layout, through however many imports.

const web = resolve(dirname(fileURLToPath(import.meta.url)), "../..");
const packages = resolve(web, "../../packages");
const sources = (folder: string): string[] =>
  readdirSync(folder, { recursive: true, encoding: "utf8" })
    .filter((path) => /\.tsx?$/.test(path) && !/\.test\.|node_modules|\.next|testing/.test(path))
    .map((path) => join(folder, path));

const files = new Set([
  ...["app", "components", "features"].flatMap((folder) => sources(join(web, folder))),
  ...readdirSync(packages).flatMap((name) => sources(join(packages, name, "src"))),
]);

/** The source file a package gives out under a name. */
function entryFile(scope: string, entry: string | undefined): string {
  const manifest: unknown = JSON.parse(readFileSync(join(packages, scope, "package.json"), "utf8"));
  const { exports } = z
    .object({ exports: z.record(z.string(), z.union([z.string(), z.object({ default: z.string() })])) })
    .parse(manifest);
  const file = exports[entry === undefined ? "." : `./${entry}`];
  if (file === undefined) throw new Error(`@probeworthy/${scope} has no entry ${entry}`);
  return join(packages, scope, typeof file === "string" ? file : file.default);
}

/** Files a file imports at run time; imports of types are gone by then. */
function importsOf(file: string): string[] {
  const found = readFileSync(file, "utf8").matchAll(
    /^(?:import|export)\s+(?!type\b)(?:[^"';]*?\sfrom\s+)?"([^"]+)";/gms,
  );
  return [...found].flatMap(([, name = ""]) => {
    if (name === "elkjs" || name.startsWith("elkjs/")) return ["elkjs"];
    const [, scope, entry] = /^@probeworthy\/([a-z-]+)(?:\/(.+))?$/.exec(name) ?? [];
    const path =
      scope !== undefined
        ? entryFile(scope, entry)
        : name.startsWith("@/")
          ? join(web, name.slice(2))
          : name.startsWith(".")
            ? resolve(dirname(file), name)
            : undefined;
    if (path === undefined) return [];
    const hit = [path, `${path}.ts`, `${path}.tsx`, join(path, "index.ts")].find((one) => files.has(one));
    return hit === undefined ? [] : [hit];
  });
}

function reaches(start: string, goal: string): string[] | undefined {
  const cameFrom = new Map<string, string | undefined>([[start, undefined]]);
  for (const [file] of cameFrom) {
    if (file === goal) {
      const way: string[] = [];
      for (let at: string | undefined = file; at !== undefined; at = cameFrom.get(at)) way.unshift(at);
      return way.map((one) => relative(web, one));
    }
    if (file === "elkjs") continue;
    for (const next of importsOf(file)) if (!cameFrom.has(next)) cameFrom.set(next, file);
  }
  return undefined;
}

test("nothing a browser loads leads to the layout engine", () => {
  const clients = [...files].filter((file) => /^["']use client["']/.test(readFileSync(file, "utf8")));
  expect(clients.length).toBeGreaterThan(50);
  expect(clients.map((file) => reaches(file, "elkjs")).filter(Boolean)).toEqual([]);
}, 20_000);

test("the search follows imports as far as the engine", () => {
  expect(reaches(join(packages, "diagram/src/layout/index.ts"), "elkjs")?.at(-1)).toContain("elkjs");
});
