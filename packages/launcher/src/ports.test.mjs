import { createServer } from "node:net";
import { expect, it } from "vitest";
import { findFreePort, isPortFree } from "./ports.mjs";

it("a port is taken while somebody listens, and free again afterwards", async () => {
  const port = await findFreePort("127.0.0.1");
  expect(await isPortFree(port, "127.0.0.1")).toBe(true);
  const server = createServer();
  await new Promise((resolve) => server.listen(port, "127.0.0.1", () => resolve(undefined)));
  expect(await isPortFree(port, "127.0.0.1")).toBe(false);
  await new Promise((resolve) => server.close(resolve));
  expect(await isPortFree(port, "127.0.0.1")).toBe(true);
});
