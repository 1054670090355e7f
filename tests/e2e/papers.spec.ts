import { expect, test } from "@playwright/test";
import { expectAccessible, signInAs } from "./support/staff";

test("a conductor is found, jumped to and traced from the keyboard; the live drawing and the print page", async ({
  page,
}) => {
  test.setTimeout(180_000);
  await signInAs(page, "instructor");
  await page.goto("/vehicles");
  await page.getByRole("link", { name: "Brambling 1.2" }).first().click();
  await page.getByRole("tab", { name: "Wiring diagrams" }).click();
  const sheet = page.getByRole("combobox", { name: "Sheet" });
  const first = await sheet.locator("option:checked").textContent();
  await expect(page.getByRole("figure", { name: `Wiring diagram: ${first}` })).toBeVisible({
    timeout: 60_000,
  });

  await test.step("search, jump to another sheet, trace", async () => {
    const search = page.getByRole("combobox", { name: "Find on the sheets" });
    await search.focus();
    await page.keyboard.type("W1");
    await expect(page.getByRole("option", { name: /^W1 / })).toHaveAttribute("aria-selected", "true");
    await page.keyboard.press("Enter");
    await expect(page.getByRole("region", { name: "Path of W1" })).toBeVisible();
    await expect(page.locator("[data-mark='W1']")).toBeVisible({ timeout: 60_000 });
    await page.getByRole("button", { name: "Show everything again" }).press("Enter");
    await expect(page.getByRole("region", { name: "Path of W1" })).toBeHidden();
    await expectAccessible(page);
  });

  await test.step("the live drawing answers to the key", async () => {
    await page.getByRole("tab", { name: "Live drawing" }).click();
    const scale = page.getByRole("figure", { name: "Scale of the drawing" });
    await expect(scale).toBeVisible({ timeout: 60_000 });
    const answer = page.waitForResponse((response) => response.url().endsWith("/potentials"));
    await page.getByRole("radio", { name: "On", exact: true }).click();
    const { conductors } = (await (await answer).json()) as { conductors: Record<string, { amps: number }> };
    expect(Math.max(...Object.values(conductors).map(({ amps }) => Math.abs(amps)))).toBeGreaterThan(0.1);
    await expectAccessible(page);
  });

  await test.step("every system has a page to print", async () => {
    await page.getByRole("tab", { name: "Wiring diagrams" }).click();
    await page.getByRole("link", { name: "Print or save" }).click();
    await expect(page.getByRole("img", { name: `Wiring diagram: ${first}` })).toBeVisible({
      timeout: 120_000,
    });
    const file = await page.request.get(
      (await page.getByRole("link", { name: `Save ${first} as SVG` }).getAttribute("href")) as string,
    );
    expect(file.headers()["content-type"]).toContain("image/svg+xml");
    expect(await file.text()).toMatch(/^(<\?xml[^>]*>\s*)?<svg /);
    await expectAccessible(page);
  });
});
