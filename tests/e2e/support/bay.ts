import { expect, type Page } from "@playwright/test";

/** Drives the bay the way a technician does: by what is written on the buttons, never by ids of the markup. */
export class Bay {
  constructor(readonly page: Page) {}

  static async signIn(page: Page, email: string): Promise<void> {
    await page.goto("/sign-in?callbackUrl=%2Fjobs");
    await page.getByLabel("Email").fill(email);
    await page.getByLabel("Password").fill("copper-learner-1");
    await page.getByRole("button", { name: "Sign in" }).click();
    await expect(page.getByRole("heading", { level: 1, name: "Jobs" })).toBeVisible();
  }

  /** Takes a job over from the list. */
  static async start(page: Page, job: string): Promise<Bay> {
    await page.getByRole("button", { name: `: ${job}` }).click();
    await expect(page.getByTestId("bay")).toBeVisible({ timeout: 60_000 });
    return new Bay(page);
  }

  async openPaper(name: "Diagram" | "Connectors, fuses" | "Points" | "Scan tool" | "Manual" | "Report") {
    await this.page.getByRole("tab", { name }).click();
  }

  async turnKey(position: "Off" | "On"): Promise<void> {
    const key = this.page.getByRole("radio", { name: position, exact: true });
    await key.click();
    await expect(key).toBeChecked();
  }

  async set(condition: string, value: number): Promise<void> {
    const before = await this.actions();
    const field = this.page.getByRole("textbox", { name: condition });
    await field.fill(String(value));
    await field.press("Enter");
    await expect.poll(() => this.actions()).toBe(before + 1);
  }

  async runEngineAndSteer(): Promise<void> {
    await this.turnKey("On");
    await this.set("Engine speed", 850);
    await this.set("Effort at the steering wheel", 6);
  }

  async place(lead: "red" | "black", point: string): Promise<void> {
    await this.openPaper("Points");
    await this.page.getByRole("searchbox", { name: "Search test points" }).fill(point);
    const button = this.page
      .getByRole("listitem")
      .filter({ has: this.page.getByText(point, { exact: true }) })
      .getByRole("button", { name: `Place the ${lead} lead` });
    await button.click();
    await expect(button).toHaveAttribute("aria-pressed", "true");
  }

  /** Takes a reading and answers what stands on the slip, in volts. */
  async readVolts(): Promise<number> {
    const before = await this.actions();
    await this.page.getByRole("button", { name: "Take reading" }).click();
    await expect.poll(() => this.actions()).toBe(before + 1);
    const shown = (await this.page.getByTestId("slip-figure").textContent()) ?? "";
    const text = shown.replaceAll(/\s+/g, " ").trim();
    const match = /^([+\u2212]?[\d.]+) ?(m?V)$/.exec(text);
    if (match === null) throw new Error(`not a voltage: ${text}`);
    return Number(match[1]?.replace("\u2212", "-")) * (match[2] === "mV" ? 1e-3 : 1);
  }

  async voltsAt(point: string): Promise<number> {
    await this.place("red", point);
    return this.readVolts();
  }

  /** Live data of the power steering module, by title. */
  async liveData(): Promise<ReadonlyMap<string, number>> {
    await this.openPaper("Scan tool");
    const before = await this.actions();
    const module = this.page.getByRole("region", { name: /Power steering module/ });
    await module.getByRole("button", { name: "Read live data" }).click();
    await expect.poll(() => this.actions()).toBe(before + 1);
    const titles = await module.getByRole("term").allInnerTexts();
    const values = await module.getByRole("definition").allInnerTexts();
    return new Map(titles.map((title, index) => [title, Number.parseFloat(values[index] ?? "")]));
  }

  async letStand(choice: string): Promise<void> {
    const before = await this.actions();
    await this.page.getByRole("combobox", { name: "For" }).selectOption({ label: choice });
    await this.page.getByRole("button", { name: "Wait" }).click();
    await expect.poll(() => this.actions()).toBe(before + 1);
  }

  async handIn(report: {
    concern: string;
    kind: string;
    place?: string;
    shows: string;
    action: string;
  }): Promise<void> {
    const { page } = this;
    await this.openPaper("Report");
    await page.getByLabel("Concern").fill(report.concern);
    await page.getByLabel("Kind of fault").selectOption({ label: report.kind });
    if (report.place !== undefined) {
      await page.getByRole("searchbox", { name: "Place of the cause" }).fill(report.place);
      await page.getByRole("listbox", { name: "Place of the cause" }).selectOption(report.place);
    }
    await page.getByLabel("What shows it").fill(report.shows);
    await page.getByLabel("What is to be done").selectOption({ label: report.action });
    await page.getByRole("button", { name: "Hand in the report" }).click();
    await page.getByRole("dialog").getByRole("button", { name: "Hand in now" }).click();
    await expect(page).toHaveURL(/\/result$/, { timeout: 90_000 });
    await expect(page.getByTestId("score")).toBeVisible({ timeout: 60_000 });
  }

  async actions(): Promise<number> {
    return Number.parseInt((await this.page.getByText(/^\d+ of \d+$/).textContent()) ?? "", 10);
  }
}
