import { expect, test } from "@playwright/test";
import { expectAccessible, signInAs } from "./support/staff";

// An instructor's own vehicle, from a blank sheet to a published version that a scenario can be built on.

const name = `Lamp board ${Date.now().toString(36)}`;
const rows = [
  ["F1:2", "S1:1", "RDWH", "1.5", "1.8"],
  ["S1:2", "E1:1", "GY", "1.5", "2.2"],
  ["E1:2", "XE1", "BN", "1.5", "0.9"],
  ["G1:-", "XE1", "BK", "16", "0.4"],
] as const;

test("battery, fuse, switch and lamp from a blank sheet", async ({ page }) => {
  test.setTimeout(300_000);
  await signInAs(page, "instructor");
  const beside = page.getByRole("complementary", { name: "What becomes of it" });

  await test.step("make a blank sheet", async () => {
    await page.getByRole("link", { name: "Vehicles" }).click();
    await page.getByRole("link", { name: "New vehicle" }).click();
    await page.getByLabel("Name of the vehicle").fill(name);
    await expectAccessible(page);
    await page.getByRole("button", { name: "Make the vehicle" }).click();
    await expect(page.getByRole("tab", { name: "Components" })).toBeVisible({ timeout: 60_000 });
  });

  await test.step("add the parts; a form holds usual values", async () => {
    for (const kind of ["Fuse", "Switch", "Lamp"]) {
      await page.getByLabel("Kind of component").selectOption({ label: kind });
      await page.getByRole("button", { name: "Add component" }).click();
    }
    await page.getByRole("button", { name: "Form of F1" }).click();
    await page.getByLabel("Rating, A").fill("10");
    await expectAccessible(page);
  });

  await test.step("wire them with the keyboard alone", async () => {
    await page.getByRole("tab", { name: "Conductors" }).click();
    await page.getByRole("button", { name: "Add conductor" }).press("Enter");
    const from = page.getByLabel("From of W1", { exact: true });
    await from.focus();
    await page.keyboard.type("G1:+");
    await page.keyboard.press("Tab");
    await page.keyboard.type("F1:1");
    for (const [index, row] of rows.entries()) {
      // Enter in the last row adds one and goes to its first cell.
      await page.keyboard.press("Escape");
      await page.keyboard.press("Enter");
      await expect(page.getByLabel(`Designator, row ${index + 2}`)).toBeFocused();
      for (const cell of row) {
        await page.keyboard.press("Tab");
        await page.keyboard.type(cell);
      }
    }
    await expect(page.getByLabel("To of W5", { exact: true })).toHaveValue("XE1");
    // A lead to a fuse has none before it, so the fuse sits close to the battery.
    await page.getByLabel("Length, m of W1", { exact: true }).fill("0.2");
  });

  await test.step("name the system and see it drawn", async () => {
    await page.getByRole("tab", { name: "Systems" }).click();
    await page.getByRole("button", { name: "Add system" }).click();
    await page.getByLabel("Title of system", { exact: true }).fill("Work lamp");
    await expect(beside.getByRole("button", { name: "E1 Lamp" })).toBeVisible({ timeout: 60_000 });
    await expectAccessible(page);
  });

  await test.step("undo and redo", async () => {
    await page.keyboard.press("Control+z");
    await expect(page.getByLabel("Title of system", { exact: true })).toHaveValue("");
    await page.keyboard.press("Control+Shift+z");
    await expect(page.getByLabel("Title of system", { exact: true })).toHaveValue("Work lamp");
  });

  await test.step("a message leads to its field and goes away when the field is right", async () => {
    await page.getByRole("tab", { name: "Conductors" }).click();
    await page.getByLabel("To of W3", { exact: true }).fill("E9:1");
    await page.getByRole("tab", { name: "Components" }).click();
    await beside.getByRole("tab", { name: "Messages (1)" }).click();
    await expectAccessible(page);
    await beside.getByRole("button", { name: "Conductor W3, to" }).click();
    const field = page.getByLabel("To of W3", { exact: true });
    await expect(field).toBeFocused();
    await field.fill("E1:1");
    await expect(beside.getByText(/it can be published|nothing looks odd/)).toBeVisible();
  });

  await test.step("the chart is measured on the draft", async () => {
    await page.getByRole("tab", { name: "Systems" }).click();
    await page.getByText("Terminal chart (0)").click();
    await page.getByRole("button", { name: "Add a row" }).click();
    await page.getByLabel("Point", { exact: true }).fill("E1:1");
    await page.getByLabel("Function", { exact: true }).fill("Lamp feed");
    await page.getByLabel("Condition in words").fill("Key on");
    await page.getByLabel("Set a condition").selectOption("key");
    await page.getByLabel("Value of key").selectOption("on");
    await beside.getByRole("tab", { name: "Chart" }).click();
    await expect(beside.getByRole("row", { name: /Lamp feed Key on 12\.\d+ V/ })).toBeVisible();
  });

  await test.step("publish it, and a scenario can be built on it", async () => {
    await page.getByRole("button", { name: "Publish version 1" }).click();
    const dialog = page.getByRole("dialog");
    await expect(dialog.getByText("Component E1, Lamp")).toBeVisible({ timeout: 60_000 });
    await expectAccessible(page);
    await dialog.getByRole("button", { name: "Publish", exact: true }).click();
    await expect(page.getByRole("heading", { level: 1, name })).toBeVisible();
    await page.getByRole("link", { name: "Vehicles", exact: true }).click();
    await expect(page.getByRole("row", { name: new RegExp(`${name}.*Work lamp.*1`) })).toBeVisible();
    await page.goto("/scenarios/new");
    await expect(page.getByLabel("Vehicle")).toContainText(name);
  });
});
