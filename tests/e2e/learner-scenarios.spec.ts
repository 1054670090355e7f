import { expect, test } from "@playwright/test";
import { Bay } from "./support/bay";
import { expectInGradebook } from "./support/staff";

// From sign-in to gradebook. The variant is drawn at random, so each test finds out from its own readings what is wrong.

test("a blown high-current fuse, or the contact behind it, is found by following the feed", async ({
  page,
  browser,
}) => {
  await Bay.signIn(page, "nia.okonjo@larkmoor.example");
  const bay = await Bay.start(page, "Job 1: the steering went heavy");
  await bay.runEngineAndSteer();
  await expect(page.getByRole("definition").filter({ hasText: "heavy: no assist at all" })).toBeVisible();
  await bay.place("black", "G1:-");

  const before = await bay.voltsAt("F2:1");
  expect(before).toBeGreaterThan(13);
  const behind = await bay.voltsAt("F2:2");
  const atModule = await bay.voltsAt("X10.1:h");
  const fuseIsOpen = behind < 1;
  if (!fuseIsOpen) {
    // The feed reaches the connector: what is left is the contact inside it.
    expect(atModule).toBeGreaterThan(13);
  }
  await bay.handIn({
    concern: "Steering heavy with the engine running, lamp on: confirmed.",
    kind: fuseIsOpen ? "Open fuse, nothing behind it" : "Open circuit",
    place: fuseIsOpen ? "F2" : "X10.1",
    shows: `Before the fuse ${before} V, behind it ${behind} V, at the module ${atModule} V.`,
    action: fuseIsOpen ? "Fit a new fuse of the same rating" : "Repair or renew the terminal",
  });
  await expect(page.getByText("The cause is named: place and kind.")).toBeVisible();
  const truth = page.getByRole("region", { name: "What was really wrong" });
  await expect(truth).toContainText(fuseIsOpen ? "F2" : "X10 cavity 1");
  await expect(page.getByRole("img", { name: /causes were possible at hand-over/ })).toBeVisible();

  await expectInGradebook(browser, page, "Nia Okonjo", "Job 1: the steering went heavy");

  // Points name their lines, and the lines are there.
  await page.getByRole("region", { name: "How the points came about" }).getByRole("link").first().click();
  await expect(page.locator("tr:target")).toBeVisible();

  await page.goto("/jobs");
  await expect(
    page.getByRole("link", { name: "See the result: Job 1: the steering went heavy" }),
  ).toBeVisible();
});

test("an open sensor ground is placed by where the voltage stands up", async ({ page, browser }) => {
  await Bay.signIn(page, "tomas.vell@larkmoor.example");
  const bay = await Bay.start(page, "Job 2: steering lamp stays on");
  await bay.runEngineAndSteer();
  await bay.place("black", "G1:-");

  // A ground that is whole stays near 0 V; behind the break the sensor lifts it towards its supply.
  const atModule = await bay.voltsAt("X12.4:h");
  const atSensor = await bay.voltsAt("X15.1:h");
  const place = atModule > 1 ? "X12.4" : atSensor > 1 ? "W32" : "X15.1";
  await bay.handIn({
    concern: "No assist in either direction, lamp on: confirmed.",
    kind: "Open circuit",
    place,
    shows: `Sensor ground at the module ${atModule} V, at the sensor ${atSensor} V.`,
    action: place === "W32" ? "Repair the conductor" : "Repair or renew the terminal",
  });
  await expect(page.getByText("The cause is named: place and kind.")).toBeVisible();
  const truth = page.getByRole("region", { name: "What was really wrong" });
  await expect(truth).toContainText(place.replace(".", " cavity "));
  await expectInGradebook(browser, page, "Tomas Vell", "Job 2: steering lamp stays on");
});

test("a hot motor that protects itself is recognised as normal by letting it cool", async ({
  page,
  browser,
}) => {
  await Bay.signIn(page, "asha.perrin@larkmoor.example");
  const bay = await Bay.start(page, "Job 3: heavy after long parking manoeuvres");
  await bay.set("Effort at the steering wheel", 6);

  const hot = await bay.liveData();
  const shareOf = (data: ReadonlyMap<string, number>) =>
    (data.get("Motor current, actual") ?? 0) / (data.get("Motor current, target") ?? 1);
  expect(shareOf(hot)).toBeLessThan(0.8);
  await bay.set("Effort at the steering wheel", 0);
  await bay.letStand("30 min");
  await bay.set("Effort at the steering wheel", 6);
  const cooled = await bay.liveData();
  expect(cooled.get("Motor temperature, computed")).toBeLessThan(hot.get("Motor temperature, computed") ?? 0);
  expect(shareOf(cooled)).toBeGreaterThan(shareOf(hot));
  expect(shareOf(cooled)).toBeGreaterThan(0.95);

  await bay.handIn({
    concern: "Gets heavy after much turning on the spot: confirmed, it comes back by itself.",
    kind: "Nothing wrong: it works as designed",
    shows: "Actual current far below target while hot, equal to it after cooling; no code.",
    action: "Explain to the customer, repair nothing",
  });
  await expect(page.getByText("Passed", { exact: true })).toBeVisible();
  await expectInGradebook(browser, page, "Asha Perrin", "Job 3: heavy after long parking manoeuvres");
});
