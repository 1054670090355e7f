import { expect, test } from "@playwright/test";

// What holds for everybody, before anybody has signed in.

test("an unknown person is told no in words, keeps the address they typed, and comes from any page", async ({
  page,
}) => {
  await page.goto("/jobs?from=mail");
  await expect(page).toHaveURL(/\/sign-in\?callbackUrl=%2Fjobs%3Ffrom%3Dmail$/);
  await page.getByLabel("Email").fill("nobody@example.test");
  await page.getByLabel("Password").fill("not the password");
  await page.keyboard.press("Enter");
  await expect(page.getByRole("alert").filter({ hasText: "Email and password do not match" })).toBeVisible();
  await expect(page.getByLabel("Email")).toHaveValue("nobody@example.test");
});

test("no script is refused by the page policy and nothing is logged as an error", async ({ page }) => {
  const complaints: string[] = [];
  page.on("console", (message) => {
    if (message.type() === "error") complaints.push(message.text());
  });
  page.on("pageerror", (error) => complaints.push(error.message));
  const response = await page.goto("/sign-in");
  expect(response?.headers()["content-security-policy"]).toMatch(
    /script-src 'self' 'nonce-[A-Za-z0-9+/=]+' 'strict-dynamic';/,
  );
  expect(response?.headers()["x-powered-by"]).toBeUndefined();
  await page.getByLabel("Email").press("Tab");
  await expect(page.getByLabel("Password")).toBeFocused();
  await page.waitForLoadState("networkidle");
  expect(complaints).toEqual([]);
});

test.describe("without JavaScript", () => {
  test.use({ javaScriptEnabled: false });

  test("the form still answers", async ({ page }) => {
    await page.goto("/sign-in");
    await page.getByLabel("Email").fill("nobody@example.test");
    await page.getByLabel("Password").fill("not the password");
    await page.getByRole("button", { name: "Sign in" }).click();
    await expect(page.getByRole("alert")).toContainText("Email and password do not match");
  });
});

test("the health address tells that the database answers and nothing else", async ({ request }) => {
  const response = await request.get("/api/health");
  expect(await response.json()).toEqual({ status: "ok" });
  expect(response.headers()["cache-control"]).toBe("no-store");
});

test("an API call without a session gets a problem, not a page", async ({ request }) => {
  const response = await request.post("/api/attempts", { data: {} });
  expect(response.status()).toBe(401);
  expect(response.headers()["content-type"]).toBe("application/problem+json");
  expect(await response.json()).toMatchObject({ type: "/problems/unauthenticated", status: 401 });
});
