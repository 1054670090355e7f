import { describe, expect, it } from "vitest";
import { parseSessionToken, sessionStillHolds, toSessionToken } from "./session-token";

const account = {
  userId: "u1",
  organisationId: "o1",
  name: "Ada",
  email: "ada@example.test",
  role: "learner",
  sessionVersion: 3,
  disabled: false,
} as const;

describe("a session", () => {
  it("survives its way through the cookie, which carries no more than it needs", () => {
    const token = parseSessionToken({ ...toSessionToken(account), iat: 1, exp: 2, jti: "x" });
    expect(token).toEqual({ userId: "u1", organisationId: "o1", role: "learner", sessionVersion: 3 });
  });

  it.each([null, {}, { userId: "u1" }, { ...toSessionToken(account), role: "owner" }])(
    "is not made from %j",
    (token) => expect(parseSessionToken(token)).toBeUndefined(),
  );

  it("holds while the person is as they were, and when only the role changed", () => {
    const token = toSessionToken(account);
    expect(sessionStillHolds(token, account)).toBe(true);
    expect(sessionStillHolds(token, { ...account, role: "instructor" })).toBe(true);
  });

  it("ends when the person is gone, disabled, or had their sessions ended", () => {
    const token = toSessionToken(account);
    expect(sessionStillHolds(token, undefined)).toBe(false);
    expect(sessionStillHolds(token, { ...account, disabled: true })).toBe(false);
    expect(sessionStillHolds(token, { ...account, sessionVersion: 4 })).toBe(false);
  });
});
