import { describe, expect, it } from "vitest";
import { contentSecurityPolicy } from "./content-security-policy";

const directives = (policy: string) =>
  new Map(policy.split("; ").map((part) => [part.split(" ")[0] ?? "", part.split(" ").slice(1)]));

describe("contentSecurityPolicy", () => {
  it("runs no inline or evaluated script in production", () => {
    const policy = directives(contentSecurityPolicy({ nonce: "abc", development: false, formTargets: [] }));
    expect(policy.get("script-src")).toEqual(["'self'", "'nonce-abc'", "'strict-dynamic'"]);
    expect(policy.get("connect-src")).toEqual(["'self'"]);
    expect(policy.get("frame-ancestors")).toEqual(["'none'"]);
    expect(policy.get("form-action")).toEqual(["'self'"]);
  });

  it("lets a sign-in form go on to the identity provider", () => {
    const formTargets = ["https://login.example.test"];
    const policy = directives(contentSecurityPolicy({ nonce: "abc", development: false, formTargets }));
    expect(policy.get("form-action")).toEqual(["'self'", "https://login.example.test"]);
  });
});
