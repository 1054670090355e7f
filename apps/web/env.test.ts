import { describe, expect, it } from "vitest";
import { parseEnvironment } from "./env";

const complete = { NEXTAUTH_SECRET: "s".repeat(32), PROBEWORTHY_DATA: "/var/lib/probeworthy" };

describe("parseEnvironment", () => {
  it("takes the least a server needs, and treats an empty variable as missing", () => {
    const parsed = parseEnvironment({ ...complete, DATABASE_URL: "", OIDC_ISSUER: "" });
    expect(parsed.DATABASE_URL).toBeUndefined();
    expect(parsed.PROBEWORTHY_DEMO).toBe(false);
  });

  it.each([
    [{ ...complete, NEXTAUTH_SECRET: undefined }, "NEXTAUTH_SECRET"],
    [{ ...complete, NEXTAUTH_SECRET: "short" }, "NEXTAUTH_SECRET"],
    [{ NEXTAUTH_SECRET: complete.NEXTAUTH_SECRET }, "PROBEWORTHY_DATA"],
    [{ ...complete, DATABASE_URL: "not a url" }, "DATABASE_URL"],
    [{ ...complete, OIDC_CLIENT_ID: "half" }, "OIDC_ISSUER"],
  ])("names what is wrong: %o", (source, variable) => {
    expect(() => parseEnvironment(source)).toThrow(variable);
  });
});
