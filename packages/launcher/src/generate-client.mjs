// Generates the Prisma client. `prisma generate` never runs the schema engine but refuses to start without
// one, and downloads a binary when it finds none. Naming any existing file satisfies that check, so nothing is
// downloaded; the Node executable is a file that is certainly there.

import { spawn } from "node:child_process";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";

const databaseFolder = fileURLToPath(new URL("../../database/", import.meta.url));

/**
 * The command that generates the client; run it in `cwd`.
 *
 * @returns {{ command: string, args: string[], cwd: string, env: Record<string, string> }}
 */
export function generateClientCommand() {
  const require = createRequire(join(databaseFolder, "package.json"));
  const cli = join(dirname(require.resolve("prisma/package.json")), "build", "index.js");
  return {
    command: process.execPath,
    args: [cli, "generate", "--no-hints"],
    cwd: databaseFolder,
    env: {
      PRISMA_SCHEMA_ENGINE_BINARY: process.execPath,
      PRISMA_HIDE_UPDATE_MESSAGE: "1",
      CHECKPOINT_DISABLE: "1",
    },
  };
}

if (process.argv[1] !== undefined && import.meta.url === pathToFileURL(process.argv[1]).href) {
  const { command, args, cwd, env } = generateClientCommand();
  const child = spawn(command, args, { cwd, env: { ...process.env, ...env }, stdio: "inherit" });
  child.on("exit", (code, signal) => {
    process.exitCode = signal === null ? (code ?? 1) : 1;
  });
}
