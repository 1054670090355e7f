import { describe, expect, it } from "vitest";
import { authenticate } from "./authenticate";

const account = {
  userId: "u1",
  organisationId: "o1",
  name: "Ada",
  email: "ada@example.test",
  role: "learner",
  sessionVersion: 1,
  disabled: false,
} as const;

function setUp(overrides: { disabled?: boolean; passwordHash?: string | null; allowed?: boolean } = {}) {
  const calls: string[] = [];
  const passwordHash = overrides.passwordHash === undefined ? "hash of right" : overrides.passwordHash;
  const dependencies = {
    findByEmail: async (email: string) =>
      email === account.email
        ? { account: { ...account, disabled: overrides.disabled ?? false }, passwordHash }
        : undefined,
    verifyPassword: async (password: string, hash: string | null) => {
      calls.push("verify");
      return hash === `hash of ${password}`;
    },
    beginTry: async (email: string) => {
      calls.push(`try ${email}`);
      return overrides.allowed ?? true;
    },
    noteSuccess: async (email: string) => void calls.push(`success ${email}`),
  };
  return { calls, dependencies };
}

describe("authenticate", () => {
  it("lets the right password in, whatever the case of the address, and forgets earlier failures", async () => {
    const { calls, dependencies } = setUp();
    const result = await authenticate({ email: " Ada@Example.TEST ", password: "right" }, dependencies);
    expect(result).toMatchObject({ ok: true, value: { userId: "u1" } });
    expect(calls).toEqual(["try ada@example.test", "verify", "success ada@example.test"]);
  });

  it.each([
    ["a wrong password", { email: "ada@example.test", password: "wrong" }, {}],
    ["an unknown address", { email: "nobody@example.test", password: "right" }, {}],
    ["a disabled person", { email: "ada@example.test", password: "right" }, { disabled: true }],
    ["a person without a password", { email: "ada@example.test", password: "right" }, { passwordHash: null }],
  ])(
    "answers %s alike: one verification, and the try stays counted",
    async (_case, credentials, overrides) => {
      const { calls, dependencies } = setUp(overrides);
      const result = await authenticate(credentials, dependencies);
      expect(result).toEqual({ ok: false, error: { code: "wrong_credentials" } });
      expect(calls).toEqual([`try ${credentials.email}`, "verify"]);
    },
  );

  it("checks nothing at all while the person has to wait", async () => {
    const { calls, dependencies } = setUp({ allowed: false });
    const result = await authenticate({ email: "ada@example.test", password: "right" }, dependencies);
    expect(result).toEqual({ ok: false, error: { code: "too_many_tries" } });
    expect(calls).toEqual(["try ada@example.test"]);
  });
});
