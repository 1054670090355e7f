import { expect, test } from "@playwright/test";
import { Bay } from "./support/bay";
import { expectAccessible, signInAs } from "./support/staff";

// The shop's path: a link that works once, a check, one page about it.

const stamp = Date.now().toString(36);

test("a candidate is invited by a link, does the check, and the manager reads one page", async ({
  page,
  browser,
}) => {
  test.setTimeout(300_000);
  const name = `Ada Candidate ${stamp}`;
  await signInAs(page, "manager");
  await expect(page.getByRole("heading", { level: 1, name: "Candidates" })).toBeVisible();
  await expectAccessible(page);

  await page.getByRole("button", { name: "Invite a candidate" }).click();
  await page.getByRole("button", { name: "Make the link" }).click();
  await expect(page.getByText("Choose a check.")).toBeVisible();
  await page.getByLabel("Name", { exact: true }).fill(name);
  await page.getByLabel("E-mail").fill(`ada.${stamp}@candidate.example`);
  await page.getByLabel("Check", { exact: true }).selectOption({ label: "Heavy all at once (Starter)" });
  await expectAccessible(page);
  await page.getByRole("button", { name: "Make the link" }).click();
  const link = (await page.getByTestId("invitation-link").textContent()) ?? "";
  expect(link).toMatch(/\/invitations\/\S{20,}$/);
  await expectAccessible(page);
  await page.getByRole("button", { name: "Done" }).click();
  const row = page.getByRole("row", { name: new RegExp(name) });
  await expect(row.getByText("Link sent")).toBeVisible();

  const context = await browser.newContext();
  const candidate = await context.newPage();
  await candidate.goto(link);
  await expect(candidate.getByRole("heading", { level: 1 })).toContainText("Tinder Lane Garage invites you");
  await expectAccessible(candidate);
  await candidate.getByLabel("Choose a password").fill("a long enough one");
  await candidate.getByRole("button", { name: "Take the job over" }).click();
  await expect(candidate.getByTestId("bay")).toBeVisible({ timeout: 90_000 });

  await page.reload();
  await expect(row.getByText(/Link used|At work/)).toBeVisible();
  await expect(row.getByRole("button", { name: /Withdraw/ })).toHaveCount(0);

  const bay = new Bay(candidate);
  await bay.runEngineAndSteer();
  await bay.place("black", "G1:-");
  const before = await bay.voltsAt("F2:1");
  const behind = await bay.voltsAt("F2:2");
  const fuseIsOpen = behind < 1;
  await bay.openPaper("Report");
  await candidate.getByLabel("Concern").fill("Heavy steering with the engine running: confirmed.");
  await candidate
    .getByLabel("Kind of fault")
    .selectOption({ label: fuseIsOpen ? "Open fuse, nothing behind it" : "Open circuit" });
  const place = fuseIsOpen ? "F2" : "X10.1";
  await candidate.getByRole("searchbox", { name: "Place of the cause" }).fill(place);
  await candidate.getByRole("listbox", { name: "Place of the cause" }).selectOption(place);
  await candidate.getByLabel("What shows it").fill(`Before the fuse ${before} V, behind it ${behind} V.`);
  await candidate.getByLabel("What is to be done").selectOption({
    label: fuseIsOpen ? "Fit a new fuse of the same rating" : "Repair or renew the terminal",
  });
  await candidate.getByRole("button", { name: "Hand in the report" }).click();
  await candidate.getByRole("dialog").getByRole("button", { name: "Hand in now" }).click();
  // This check keeps its result for the shop.
  await expect(candidate.getByText("Your report is handed in")).toBeVisible({ timeout: 90_000 });
  await expect(candidate.getByTestId("score")).toHaveCount(0);

  await page.reload();
  await row.getByRole("link", { name: /See the result/ }).click();
  await expect(page.getByTestId("score")).toBeVisible({ timeout: 60_000 });
  await expect(page.getByRole("heading", { name: "What the readings proved" })).toBeVisible();
  await expectAccessible(page);
  await page.emulateMedia({ media: "print" });
  const pdf = await page.pdf({ format: "A4" });
  const pages = pdf.toString("latin1").match(/\/Type\s*\/Page\b/g)?.length;
  expect(pages, "pages of the printed result").toBe(1);
  await page.emulateMedia({ media: null });
  await page.getByRole("link", { name: "Every step" }).click();
  await expect(page.getByRole("heading", { name: "Replay" })).toBeVisible({ timeout: 60_000 });

  // The link has done its work: for a stranger, and for the candidate.
  const stranger = await (await browser.newContext()).newPage();
  await stranger.goto(link);
  await expect(stranger.getByText("This link has been used")).toBeVisible();
  await expect(stranger.getByRole("button", { name: "Take the job over" })).toHaveCount(0);
  await candidate.goto(link);
  await expect(candidate.getByText("This link has been used")).toBeVisible();
  await stranger.context().close();
  await context.close();
});

test("a withdrawn link opens nothing", async ({ page, browser }) => {
  const name = `Bo Withdrawn ${stamp}`;
  await signInAs(page, "manager");
  await page.getByRole("button", { name: "Invite a candidate" }).click();
  await page.getByLabel("Name", { exact: true }).fill(name);
  await page.getByLabel("E-mail").fill(`bo.${stamp}@candidate.example`);
  await page.getByLabel("Check", { exact: true }).selectOption({ index: 1 });
  await page.getByRole("button", { name: "Make the link" }).click();
  const link = (await page.getByTestId("invitation-link").textContent()) ?? "";
  await page.getByRole("button", { name: "Done" }).click();
  const row = page.getByRole("row", { name: new RegExp(name) });
  await row.getByRole("button", { name: `Withdraw the link for ${name}` }).click();
  await page.getByRole("dialog").getByRole("button", { name: "Withdraw the link" }).click();
  await expect(row.getByText("Withdrawn", { exact: true })).toBeVisible();
  const stranger = await (await browser.newContext()).newPage();
  await stranger.goto(link);
  await expect(stranger.getByText("This link was withdrawn")).toBeVisible();
  await stranger.context().close();
});
