import { mkdirSync, mkdtempSync, rmSync, utimesSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { fingerprint, readStamp, writeStamp } from "./stamps.mjs";

describe("fingerprint", () => {
  /** @type {string} */
  let base;
  beforeEach(() => {
    base = mkdtempSync(join(tmpdir(), "stamps-"));
    mkdirSync(join(base, "src", "deep"), { recursive: true });
    writeFileSync(join(base, "src", "a.ts"), "one");
    writeFileSync(join(base, "src", "deep", "b.ts"), "two");
    writeFileSync(join(base, "lock.yaml"), "lock");
  });
  afterEach(() => rmSync(base, { recursive: true, force: true }));

  const now = () => fingerprint(base, ["src", "lock.yaml"]);

  it("stays when only dates or results change", () => {
    const before = now();
    utimesSync(join(base, "src", "a.ts"), new Date(0), new Date(0));
    mkdirSync(join(base, "src", "node_modules"));
    writeFileSync(join(base, "src", "node_modules", "c.ts"), "three");
    expect(now()).toBe(before);
  });

  it.each([
    ["a changed file", () => writeFileSync(join(base, "src", "deep", "b.ts"), "2")],
    ["a new file", () => writeFileSync(join(base, "src", "c.ts"), "")],
    ["a removed file", () => rmSync(join(base, "src", "a.ts"))],
    ["a removed folder", () => rmSync(join(base, "src"), { recursive: true })],
    [
      "content that moved between files",
      () => {
        writeFileSync(join(base, "src", "a.ts"), "two");
        writeFileSync(join(base, "src", "deep", "b.ts"), "one");
      },
    ],
  ])("changes with %s", (_, change) => {
    const before = now();
    change();
    expect(now()).not.toBe(before);
  });

  it("leaves out what is not a source", () => {
    const sources = () => fingerprint(base, ["src"], (path) => !path.endsWith(".test.ts"));
    const before = sources();
    writeFileSync(join(base, "src", "a.test.ts"), "test");
    expect(sources()).toBe(before);
  });

  it("tells bytes apart that are no text", () => {
    writeFileSync(join(base, "lock.yaml"), new Uint8Array([0xff, 0xfe]));
    const before = now();
    writeFileSync(join(base, "lock.yaml"), new Uint8Array([0xff, 0xfd]));
    expect(now()).not.toBe(before);
  });

  it("is kept in a stamp", () => {
    const stamp = join(base, "made", "from");
    expect(readStamp(stamp)).toBeNull();
    writeStamp(stamp, "abc");
    expect(readStamp(stamp)).toBe("abc");
  });
});
