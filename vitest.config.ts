import { defineConfig } from "vitest/config";

const project = (name: string, include: string[], extra: object = {}) => ({
  test: { name, include, environment: "node" as const, ...extra },
});

export default defineConfig({
  test: {
    projects: [
      project("unit", ["packages/*/src/**/*.test.ts", "apps/web/**/*.test.ts"]),
      project("reference", ["tests/reference/**/*.test.ts"], { testTimeout: 120_000 }),
      project("contract", ["tests/contract/**/*.test.ts"], { testTimeout: 60_000 }),
      project("integration", ["tests/integration/**/*.test.ts"], {
        testTimeout: 120_000,
        hookTimeout: 120_000,
      }),
    ],
  },
});
