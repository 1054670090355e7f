import { expect, test } from "@playwright/test";
import { Bay } from "./support/bay";
import { expectAccessible, signInAs } from "./support/staff";

// The instructor's path: build, hand out, read the gradebook, judge. Everything made here has names of its own, because
// other tests run on the same server.

const stamp = Date.now().toString(36);
const scenarioTitle = `Feed practice ${stamp}`;
const jobTitle = `Heavy on the way home ${stamp}`;

test("from a copied scenario to a score that was changed with a reason", async ({ page, browser }) => {
  test.setTimeout(300_000);
  await signInAs(page, "instructor");
  await expect(page.getByRole("heading", { level: 1, name: "Classes" })).toBeVisible();
  await expectAccessible(page);

  await test.step("build a scenario from a copy", async () => {
    await page.getByRole("link", { name: "Scenarios" }).click();
    await expect(page.getByRole("link", { name: "Heavy all at once" })).toBeVisible();
    await expectAccessible(page);
    await page.getByRole("link", { name: "New scenario" }).click();
    await page.getByLabel("Title", { exact: true }).fill(scenarioTitle);
    await page.getByLabel("Start from").selectOption({ label: "a copy of Heavy all at once" });
    await expectAccessible(page);
    await page.getByRole("button", { name: "Go on to the builder" }).click();
    await expect(page.getByRole("heading", { name: "What can be wrong" })).toBeVisible({ timeout: 60_000 });
  });

  await test.step("what is missing stands in the list, leads to its field, and is saved meanwhile", async () => {
    await page.getByRole("button", { name: "Remove candidate 2" }).click();
    await page.getByLabel("Candidate 1: title").fill("");
    const draft = page.getByRole("complementary", { name: "Draft" });
    const missing = draft.getByRole("button", { name: "Candidate 1, title" });
    await expect(missing).toBeVisible();
    await missing.click();
    await expect(page.getByLabel("Candidate 1: title")).toBeFocused();
    await expectAccessible(page);
    await page.getByLabel("Candidate 1: title").fill("Main fuse of the steering open");
    await page.getByLabel("Learning goal").click();
    await expect(draft.getByText("Complete: it can be previewed and published.")).toBeVisible();
  });

  await test.step("a place is chosen from what the vehicle has for this kind of fault", async () => {
    await page.getByLabel("Fault 1: kind").selectOption({ label: "Too much resistance" });
    await page.getByRole("button", { name: "Choose a place" }).click();
    await page.getByRole("dialog").getByLabel("Search").fill("X10.2");
    await page
      .getByRole("dialog")
      .getByRole("button", { name: "Contact of X10 cavity 2", exact: true })
      .click();
    await expect(page.getByText("Contact of X10 cavity 2", { exact: true })).toBeVisible();
    await expect(page.getByLabel("From, Ω")).toHaveValue("0.2");
    await page.getByLabel("Fault 1: kind").selectOption({ label: "Fuse open, nothing behind it" });
    await page.getByRole("button", { name: "Choose a place" }).click();
    await page.getByRole("dialog").getByLabel("Search").fill("F2");
    await page.getByRole("dialog").getByRole("listitem").getByRole("button").first().click();
    await expect(page.getByRole("dialog")).toBeHidden();
  });

  await test.step("the preview shows what learners will meet", async () => {
    await page.getByLabel("Variants").selectOption("2");
    await page.getByRole("button", { name: "Draw variants" }).click();
    const table = page.getByRole("table", { name: "Drawn variants side by side" });
    await expect(table.getByRole("columnheader", { name: /Variant 2/ })).toBeVisible({ timeout: 60_000 });
    await expect(table.getByText("Fuse blown: F2")).toHaveCount(2);
    await expect(table.getByText(/Steering effort felt: heavy: no assist at all/).first()).toBeVisible();
    await expectAccessible(page);
  });

  await test.step("the draft is still there after leaving, then it is published", async () => {
    await expect(page.getByText(/^Draft saved/)).toBeVisible();
    await page.reload();
    await expect(page.getByLabel("Candidate 1: title")).toHaveValue("Main fuse of the steering open");
    await page.getByRole("button", { name: "Publish version 1" }).click();
    await expect(page).toHaveURL(/\/scenarios\/[0-9a-f-]+$/, { timeout: 60_000 });
    await expect(page.getByRole("cell", { name: "Fuse open, nothing behind it: F2" })).toBeVisible();
    await expectAccessible(page);
  });

  await test.step("hand it out to the class", async () => {
    await page.getByRole("link", { name: "to Vehicle Systems 2B" }).click();
    await expect(page.getByLabel("Scenario")).not.toHaveValue("");
    await page.getByLabel("Title for learners").fill(jobTitle);
    await expectAccessible(page);
    await page.getByRole("button", { name: "Hand it out" }).click();
    await expect(page.getByRole("row", { name: new RegExp(jobTitle) })).toBeVisible({ timeout: 60_000 });
    await expectAccessible(page);
    await page.getByRole("tab", { name: /^Learners/ }).click();
    await expectAccessible(page);
  });

  await test.step("a learner works it", async () => {
    const context = await browser.newContext();
    const learner = await context.newPage();
    await Bay.signIn(learner, "viktor.lund@larkmoor.example");
    const bay = await Bay.start(learner, jobTitle);
    await bay.runEngineAndSteer();
    await bay.place("black", "G1:-");
    const before = await bay.voltsAt("F2:1");
    const behind = await bay.voltsAt("F2:2");
    await bay.handIn({
      concern: "Steering heavy with the engine running: confirmed.",
      kind: "Open fuse, nothing behind it",
      place: "F2",
      shows: `Before the fuse ${before} V, behind it ${behind} V.`,
      action: "Fit a new fuse of the same rating",
    });
    await context.close();
  });

  await test.step("the result stands in the gradebook and in the file", async () => {
    await page.goto("/classes");
    await page.getByRole("link", { name: "Vehicle Systems 2B" }).click();
    const cell = page.getByRole("link", { name: new RegExp(`review Viktor Lund, ${jobTitle}`) });
    await expect(cell).toHaveText(/^\d+\.\d (not )?passed$/);
    const score = ((await cell.textContent()) ?? "").split(" ")[0];
    await expectAccessible(page);
    const [file] = await Promise.all([
      page.waitForEvent("download"),
      page.getByRole("link", { name: "Download CSV" }).click(),
    ]);
    const csv = await (await file.createReadStream()).toArray();
    const text = Buffer.concat(csv).toString("utf8");
    expect(text).toContain(jobTitle);
    expect(text).toMatch(new RegExp(`Viktor Lund,viktor\\.lund@larkmoor\\.example,.*${score}`));
    await page.getByRole("link", { name: "Statistics" }).click();
    await expect(page.getByRole("heading", { level: 1, name: "Statistics" })).toBeVisible();
    await expect(page.getByRole("row", { name: new RegExp(jobTitle) })).toContainText(
      "Too few attempts: 1 of the 5 it takes",
    );
    await expect(page.getByRole("heading", { name: "What is taken for what" })).toBeVisible();
    await expectAccessible(page);
    await page.goBack();
    await cell.click();
  });

  await test.step("replay, then a decision with a reason", async () => {
    await expect(page.getByRole("heading", { name: "Replay" })).toBeVisible({ timeout: 60_000 });
    await expect(page.getByText("Fuse blown: F2", { exact: true })).toBeVisible();
    await page.getByRole("slider", { name: "Line of the log" }).press("End");
    await expect(page.getByText("Handed in the report").first()).toBeVisible();
    await expectAccessible(page);
    await page.getByRole("textbox", { name: "Score" }).fill("91");
    await page.getByRole("button", { name: "Set the score" }).click();
    await expect(page.getByText(/Say why in at least 10 characters/)).toBeVisible();
    await page.getByLabel("Reason").fill("Explained the load on the feed in class.");
    await page.getByRole("button", { name: "Set the score" }).click();
    await expect(page.getByTestId("score")).toHaveText("91.0");
    await expect(page.getByText(/Set to 91\.0/)).toBeVisible();
    await page.getByRole("link", { name: "Gradebook" }).click();
    const cell = page.getByRole("link", { name: new RegExp(`review Viktor Lund, ${jobTitle}`) });
    await expect(cell).toHaveText("91.0 passed");
    await expect(page.getByRole("cell", { name: new RegExp(`${jobTitle}.*changed`, "s") })).toBeVisible();
  });
});

test("a manual's chart is checked row by row, and a bad one names line and column", async ({ page }) => {
  test.setTimeout(240_000);
  await signInAs(page, "instructor");
  await page.getByRole("link", { name: "Vehicles" }).click();
  await expectAccessible(page);
  await page.getByRole("link", { name: "Brambling 1.2", exact: true }).click();
  await expect(page.getByRole("heading", { name: "Terminal chart" })).toBeVisible({ timeout: 60_000 });
  await expectAccessible(page);
  await page.getByRole("link", { name: "Check a terminal chart" }).click();
  const heading = "terminal,function,condition,expected low,expected high,unit";
  await page.getByLabel("Name").fill("A page of a manual");
  await page.getByLabel("Chart", { exact: true }).fill(`${heading}\nF2:1,Battery feed,key=off,eleven,14,V`);
  await page.getByRole("button", { name: "Check it" }).click();
  await expect(page.getByRole("alert").filter({ hasText: "line 2, expected low" })).toBeVisible();
  await expectAccessible(page);
  await page
    .getByLabel("Chart", { exact: true })
    .fill(`${heading}\nF2:1,Battery feed,key=off,11,14,V\nF2:1,Battery feed,key=off,1,2,V`);
  await page.getByRole("button", { name: "Check it" }).click();
  await expect(page.getByText("1 of 2 rows differ from the simulated vehicle.")).toBeVisible({
    timeout: 60_000,
  });
  await expect(page.getByRole("row", { name: /F2:1 Battery feed .* agrees/ })).toBeVisible();
  await expect(page.getByRole("row", { name: /F2:1 Battery feed .* differs/ })).toBeVisible();
  await expectAccessible(page);
});

test("people are added with a first password that works, and every change stands in the log", async ({
  page,
  browser,
}) => {
  test.setTimeout(240_000);
  await signInAs(page, "administrator");
  await expect(page.getByRole("heading", { level: 1, name: "People" })).toBeVisible();
  await expectAccessible(page);
  const email = `new.${stamp}@larkmoor.example`;
  await page.getByRole("button", { name: "Add a person" }).click();
  await page.getByLabel("Name", { exact: true }).fill("Noor Added");
  await page.getByLabel("E-mail").fill(email);
  await page.getByLabel("Role").selectOption({ label: "Instructor" });
  await expectAccessible(page);
  await page.getByRole("button", { name: "Add", exact: true }).click();
  const password = (await page.getByTestId("first-password").textContent()) ?? "";
  await page.getByRole("button", { name: "Done" }).click();

  const context = await browser.newContext();
  const added = await context.newPage();
  await added.goto("/sign-in");
  await added.getByLabel("Email").fill(email);
  await added.getByLabel("Password").fill(password);
  await added.getByRole("button", { name: "Sign in" }).click();
  await expect(added.getByText("No class yet")).toBeVisible({ timeout: 60_000 });
  await expectAccessible(added);

  const row = page.getByRole("row", { name: new RegExp(email) });
  await row.getByRole("button", { name: "Change Noor Added" }).click();
  await page.getByRole("button", { name: "Shut out" }).click();
  await expect(page.getByText("Noor Added is shut out.")).toBeVisible();
  await page.getByRole("button", { name: "Close" }).click();
  await expect(row.getByText("Shut out")).toBeVisible();
  await added.goto("/classes");
  await expect(added).toHaveURL(/sign-in/);
  await context.close();

  await page.getByRole("link", { name: "Log", exact: true }).click();
  await page.getByLabel("About").selectOption("person");
  await page.getByRole("button", { name: "Show" }).click();
  await expect(page.getByRole("row", { name: new RegExp(`person.disabled.*${email}`) })).toBeVisible();
  await expectAccessible(page);
});
