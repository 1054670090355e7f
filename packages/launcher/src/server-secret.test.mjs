import { chmodSync, mkdtempSync, rmSync, statSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, it } from "vitest";
import { serverSecret } from "./server-secret.mjs";

it("the server's secret is long, kept, and readable by its owner only", () => {
  const data = join(mkdtempSync(join(tmpdir(), "secret-")), "data");
  try {
    const secret = serverSecret(data);
    expect(secret).toMatch(/^[\w-]{43}$/);
    const file = join(data, "server-secret");
    expect(statSync(file).mode & 0o777).toBe(0o600);
    chmodSync(file, 0o644);
    expect(serverSecret(data)).toBe(secret);
    expect(statSync(file).mode & 0o777).toBe(0o600);
  } finally {
    rmSync(join(data, ".."), { recursive: true, force: true });
  }
});
