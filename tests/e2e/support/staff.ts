import { type Browser, expect, type Page } from "@playwright/test";
import { axeViolations } from "./axe";

/** Sign-ins of the demo (prisma/seed/people.ts). */
const people = {
  instructor: { email: "iris.fenwick@larkmoor.example", password: "copper-instructor-1" },
  manager: { email: "marta.quill@tinderlane.example", password: "copper-manager-1" },
  administrator: { email: "oskar.dale@larkmoor.example", password: "copper-administrator-1" },
} as const;

/** Signs in and comes out on the person's own first page. */
export async function signInAs(page: Page, role: keyof typeof people): Promise<void> {
  await page.goto("/sign-in");
  await page.getByLabel("Email").fill(people[role].email);
  await page.getByLabel("Password").fill(people[role].password);
  await page.getByRole("button", { name: "Sign in" }).click();
  await expect(page).not.toHaveURL(/sign-in/, { timeout: 60_000 });
}

/** The page as it stands breaks no rule, in light and in dark, and does not scroll sideways. */
export async function expectAccessible(page: Page): Promise<void> {
  for (const colorScheme of ["dark", "light"] as const) {
    await page.emulateMedia({ colorScheme });
    expect(await axeViolations(page), `${page.url()} ${colorScheme}`).toEqual([]);
  }
  const overflow = await page.evaluate<number>(
    "document.documentElement.scrollWidth - document.documentElement.clientWidth",
  );
  expect(overflow, `${page.url()} scrolls sideways`).toBeLessThanOrEqual(0);
}

/** The learner's score stands in the instructor's gradebook, exactly as the learner's own result shows it. */
export async function expectInGradebook(browser: Browser, learnersPage: Page, learner: string, job: string) {
  const score = await learnersPage.getByTestId("score").textContent();
  const context = await browser.newContext();
  const page = await context.newPage();
  await signInAs(page, "instructor");
  await page.getByRole("link", { name: "Vehicle Systems 2B" }).click();
  const cell = page.getByRole("link", { name: new RegExp(`review ${learner}, ${job}`) });
  await expect(cell).toHaveText(new RegExp(`^${score} (not )?passed$`));
  await context.close();
}
