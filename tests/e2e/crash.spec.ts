import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, test } from "@playwright/test";
import { Bay } from "./support/bay";
import { prepareData, type RunningServer, startServer } from "./support/server";

const learner = "petra.novak@larkmoor.example";

test("a server killed in the middle of an attempt loses no acknowledged action", async ({ browser }) => {
  test.setTimeout(240_000);
  const dataDirectory = await mkdtemp(join(tmpdir(), "probeworthy-crash-"));
  const servers: RunningServer[] = [];
  const start = async () => {
    const server = await startServer(dataDirectory);
    servers.push(server);
    return server;
  };
  try {
    await prepareData(dataDirectory);
    const before = await start();
    const first = await browser.newContext({ baseURL: before.url });
    const page = await first.newPage();
    await Bay.signIn(page, learner);
    const bay = await Bay.start(page, "Job 1: the steering went heavy");
    const path = new URL(page.url()).pathname;
    await bay.turnKey("On");
    await bay.place("black", "G1:-");
    const volts = await bay.voltsAt("G1:+");
    const actions = await bay.actions();
    await before.stop("SIGKILL");
    // What was not acknowledged is kept in the browser and said to be waiting, not shown as done.
    await page.getByRole("button", { name: "Take reading" }).click();
    await expect(page.getByRole("button", { name: "Try again" })).toBeVisible();
    expect(await bay.actions()).toBe(actions);
    await first.close();

    const after = await start();
    const second = await browser.newContext({ baseURL: after.url });
    const again = await second.newPage();
    await Bay.signIn(again, learner);
    await again.goto(path);
    await expect(again.getByTestId("slip-figure")).toContainText(String(volts));
    const resumed = new Bay(again);
    expect(await resumed.actions()).toBe(actions);
    expect(await resumed.readVolts()).toBeCloseTo(volts, 1);
    expect(await resumed.actions()).toBe(actions + 1);
    await second.close();
  } finally {
    for (const server of servers) await server.stop();
    await rm(dataDirectory, { recursive: true, force: true });
  }
});
