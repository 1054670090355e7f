import { describe, expect, it } from "vitest";
import { safeReturnPath } from "./safe-return-path";

describe("safeReturnPath", () => {
  it.each(["/jobs", "/classes/7/gradebook?sort=name", "/jobs/1#log"])("keeps our own path %s", (path) => {
    expect(safeReturnPath(path)).toBe(path);
  });

  it.each([
    "https://elsewhere.test/jobs",
    "//elsewhere.test",
    "/\\elsewhere.test",
    "/\t/elsewhere.test",
    "/..//elsewhere.test",
    "/.//elsewhere.test",
    "javascript:alert(1)",
    "jobs",
    "",
    "/sign-in?callbackUrl=/sign-in",
    "/sign-out",
    "/api/attempts",
    undefined,
    null,
    7,
    ["/jobs"],
  ])("sends %j to the start page", (path) => {
    expect(safeReturnPath(path)).toBe("/");
  });
});
