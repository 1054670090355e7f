import { expect, test } from "@playwright/test";
import { axeViolations } from "./support/axe";
import { Bay } from "./support/bay";

test("a refusal is shown in words beside the step, and nothing is recorded", async ({ page }) => {
  await Bay.signIn(page, "luca.brandt@larkmoor.example");
  const bay = await Bay.start(page, "Job 1: the steering went heavy");
  await page.getByRole("button", { name: "Take reading" }).click();
  await expect(page.getByTestId("refusal")).toContainText("Not done.");
  await expect(page.getByRole("status").filter({ hasText: "Not done." })).toBeAttached();
  expect(await bay.actions()).toBe(0);
  await expect(page.getByRole("tab", { name: "Log (1)" })).toBeVisible();
  expect(await axeViolations(page)).toEqual([]);
});

test("a reload in the middle keeps leads, readings, what is unplugged and the report's draft", async ({
  page,
}) => {
  await Bay.signIn(page, "mei.tanner@larkmoor.example");
  const bay = await Bay.start(page, "Job 1: the steering went heavy");
  await bay.place("black", "G1:-");
  const volts = await bay.voltsAt("G1:+");
  await bay.openPaper("Connectors, fuses");
  await page.getByRole("button", { name: /^X11 / }).click();
  await page.getByRole("button", { name: "Unplug X11" }).click();
  const dialog = page.getByRole("dialog", { name: "Unplug X11?" });
  await expect(dialog).toContainText("airbag");
  await dialog.getByRole("button", { name: "Unplug X11" }).click();
  await expect(page.getByRole("button", { name: "Plug back X11" })).toBeVisible();
  await bay.openPaper("Report");
  await page.getByLabel("Concern").fill("Half a sentence");

  await page.reload();

  await expect(page.getByTestId("slip-figure")).toContainText(String(volts));
  await expect(page.getByText("stale: something has changed")).toBeVisible();
  await expect(page.getByRole("button", { name: "Plug back X11" })).toBeVisible();
  await bay.openPaper("Report");
  await expect(page.getByLabel("Concern")).toHaveValue("Half a sentence");
  await page.getByRole("button", { name: "Plug back X11" }).click();
  await expect(page.getByText("Everything is plugged in")).toBeVisible();
});

test("leads are placed on the drawing and read from the keyboard alone", async ({ page }) => {
  await Bay.signIn(page, "jonah.reyes@larkmoor.example");
  const bay = await Bay.start(page, "Job 1: the steering went heavy");
  // The search takes the red lead to battery positive.
  await page.locator("body").press("/");
  await expect(page.getByRole("searchbox", { name: "Search test points" })).toBeFocused();
  await page.keyboard.type("G1 terminal +");
  await page.keyboard.press("Enter");
  await expect(page.getByRole("button", { name: "Black lead in hand" })).toBeVisible();
  // The drawing takes the black one: one Tab stop, then the arrow keys.
  await page.getByRole("tab", { name: "Points" }).focus();
  await page.keyboard.press("Home");
  await expect(page.getByRole("tab", { name: "Diagram" })).toHaveAttribute("aria-selected", "true");
  const target = page.locator("[data-target='point X2.1:h']");
  await target.focus();
  await page.keyboard.press("Enter");
  await expect(target).toHaveAttribute("aria-pressed", "true");
  await page.keyboard.press("m");
  await expect(page.getByTestId("slip-figure")).toContainText(/\+1[0-9]\.[0-9]+/);
  await expect(page.getByRole("status").filter({ hasText: /^Reading: 1\d\.\d+ volts/ })).toBeAttached();
  expect(await bay.actions()).toBe(3);
  await page.keyboard.press("?");
  await expect(page.getByRole("dialog", { name: "How to work here" })).toBeVisible();
  expect(await axeViolations(page)).toEqual([]);
});

test("a step whose answer was lost is sent again and counts once", async ({ page }) => {
  await Bay.signIn(page, "freya.holm@larkmoor.example");
  const bay = await Bay.start(page, "Job 1: the steering went heavy");
  await page.route("**/commands", async (route) => {
    await route.fetch();
    await route.abort("connectionreset");
  });
  await page.getByRole("radio", { name: "On", exact: true }).click();
  const alert = page.getByRole("alert").filter({ hasText: "The server did not answer" });
  await expect(alert).toBeVisible();
  await page.unroute("**/commands");
  await alert.getByRole("button", { name: "Try again" }).click();
  await expect(page.getByRole("radio", { name: "On", exact: true })).toBeChecked();
  await expect(alert).toBeHidden();
  expect(await bay.actions()).toBe(1);
});

test("two windows on one job: the slower one catches up and says so", async ({ page, context }) => {
  await Bay.signIn(page, "idris.kane@larkmoor.example");
  const bay = await Bay.start(page, "Job 1: the steering went heavy");
  const second = await context.newPage();
  await second.goto(page.url());
  await expect(second.getByTestId("bay")).toBeVisible();
  await bay.turnKey("On");
  await second.getByRole("button", { name: "Wait" }).click();
  await expect(second.getByTestId("refusal")).toContainText("The job went on somewhere else");
  await expect(second.getByRole("radio", { name: "On", exact: true })).toBeChecked();
  expect(await new Bay(second).actions()).toBe(1);
});

for (const [width, height, scheme] of [
  [1440, 900, "light"],
  [820, 1180, "dark"],
] as const) {
  test(`every paper of the bay is accessible at ${width} px, ${scheme}`, async ({ page }) => {
    await page.setViewportSize({ width, height });
    await page.emulateMedia({ colorScheme: scheme });
    await Bay.signIn(page, width === 820 ? "petra.novak@larkmoor.example" : "sam.whitlock@larkmoor.example");
    expect(await axeViolations(page)).toEqual([]);
    const bay = await Bay.start(page, "Job 2: steering lamp stays on");
    for (const paper of [
      "Diagram",
      "Connectors, fuses",
      "Points",
      "Scan tool",
      "Manual",
      "Report",
    ] as const) {
      await bay.openPaper(paper);
      expect(await axeViolations(page), paper).toEqual([]);
    }
    const overflow = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
    expect(overflow).toBeLessThanOrEqual(0);
  });
}
