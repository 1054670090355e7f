import { expect, it } from "vitest";
import { beginSignIn, noteSuccessfulSignIn } from "./sign-in-throttle";

it("stops an account after ten failures, even when all are tried at once and from everywhere", async () => {
  const email = "throttle@example.test";
  const tries = await Promise.all(
    Array.from({ length: 30 }, (_, index) => beginSignIn(email, `10.0.0.${index}`)),
  );
  expect(tries.filter((allowed) => allowed)).toHaveLength(10);
  expect(await beginSignIn("other@example.test", "10.0.0.1")).toBe(true);
  await noteSuccessfulSignIn(email, "10.0.0.1");
  expect(await beginSignIn(email, "10.0.0.1")).toBe(true);
});

it("lets a class of any size sign in from one address, but not a hundred failures", async () => {
  const address = "192.0.2.1";
  for (let person = 0; person < 150; person += 1) {
    expect(await beginSignIn(`learner${person}@example.test`, address)).toBe(true);
    await noteSuccessfulSignIn(`learner${person}@example.test`, address);
  }
  for (let failure = 0; failure < 100; failure += 1)
    await beginSignIn(`guess${failure}@example.test`, address);
  expect(await beginSignIn("late@example.test", address)).toBe(false);
});
