import { existsSync } from "node:fs";
import { defineConfig } from "@playwright/test";

// An empty or missing variable lets Playwright use a browser it has downloaded itself.
const systemChromium = "/usr/bin/chromium";
const executablePath =
  process.env.PROBEWORTHY_CHROMIUM || (existsSync(systemChromium) ? systemChromium : undefined);

export default defineConfig({
  testDir: "tests/e2e",
  outputDir: "test-results/e2e",
  // Starts the built product on a data folder of its own unless PROBEWORTHY_URL names a running one.
  globalSetup: "./tests/e2e/support/server.ts",
  forbidOnly: true,
  fullyParallel: true,
  workers: 2,
  timeout: 180_000,
  expect: { timeout: 20_000 },
  reporter: [["list"], ["json", { outputFile: "test-results/e2e.json" }]],
  use: {
    ...(process.env.PROBEWORTHY_URL ? { baseURL: process.env.PROBEWORTHY_URL } : {}),
    trace: "retain-on-failure",
    viewport: { width: 1440, height: 900 },
    launchOptions: {
      ...(executablePath === undefined ? {} : { executablePath }),
      args: [
        "--no-sandbox",
        "--disable-gpu",
        "--disable-quic",
        "--no-first-run",
        "--disable-background-networking",
        "--disable-component-update",
        "--disable-sync",
      ],
    },
  },
});
