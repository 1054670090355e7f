import { type ChildProcess, execFile, spawn } from "node:child_process";
import { randomBytes } from "node:crypto";
import { once } from "node:events";
import { existsSync } from "node:fs";
import { mkdtemp, rm } from "node:fs/promises";
import { createServer } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { promisify } from "node:util";

const root = fileURLToPath(new URL("../../..", import.meta.url));
const web = join(root, "apps/web");
const secondsToStart = 60;

export interface RunningServer {
  readonly url: string;
  readonly dataDirectory: string;
  /** Ends the process with this signal and waits for it; the data folder stays. */
  stop(signal?: NodeJS.Signals): Promise<void>;
}

/** Migrates the folder and puts the demo into it when it is new. */
export async function prepareData(dataDirectory: string): Promise<void> {
  await promisify(execFile)(
    process.execPath,
    ["--import", "tsx", "packages/database/src/cli.ts", "prepare", "--data", dataDirectory],
    { cwd: root },
  );
}

/** Starts the built product; with the same folder again it goes on where it was. */
export async function startServer(dataDirectory: string): Promise<RunningServer> {
  if (!existsSync(join(web, ".next/BUILD_ID"))) throw new Error("The web is not built. Run: pnpm build");
  const port = await freePort();
  const url = `http://127.0.0.1:${port}`;
  const child = spawn(
    process.execPath,
    [
      join(web, "node_modules/next/dist/bin/next"),
      "start",
      "--port",
      String(port),
      "--hostname",
      "127.0.0.1",
    ],
    {
      cwd: web,
      env: {
        ...process.env,
        NODE_ENV: "production",
        NEXTAUTH_SECRET: randomBytes(32).toString("hex"),
        NEXTAUTH_URL: "",
        DATABASE_URL: "",
        PROBEWORTHY_DATA: dataDirectory,
        PROBEWORTHY_DEMO: "1",
        NEXT_TELEMETRY_DISABLED: "1",
      },
      stdio: ["ignore", "pipe", "pipe"],
    },
  );
  const said = collectOutput(child);
  await untilHealthy(url, child, said);
  return {
    url,
    dataDirectory,
    stop: async (signal = "SIGTERM") => {
      if (child.exitCode !== null || child.signalCode !== null) return;
      child.kill(signal);
      await once(child, "exit");
    },
  };
}

/** Playwright's global set-up; what it returns is run at the end. */
export default async function setUp(): Promise<(() => Promise<void>) | undefined> {
  if (process.env.PROBEWORTHY_URL) return undefined;
  const dataDirectory = await mkdtemp(join(tmpdir(), "probeworthy-e2e-"));
  await prepareData(dataDirectory);
  const server = await startServer(dataDirectory);
  // The test workers read it when they load the configuration.
  process.env.PROBEWORTHY_URL = server.url;
  return async () => {
    await server.stop();
    await rm(dataDirectory, { recursive: true, force: true });
  };
}

function collectOutput(child: ChildProcess): () => string {
  const chunks: string[] = [];
  for (const stream of [child.stdout, child.stderr]) {
    stream?.on("data", (chunk: Buffer) => chunks.push(chunk.toString("utf8")));
  }
  return () => chunks.join("");
}

async function untilHealthy(url: string, child: ChildProcess, said: () => string): Promise<void> {
  const deadline = performance.now() + secondsToStart * 1000;
  while (performance.now() < deadline) {
    if (child.exitCode !== null) throw new Error(`The server ended with ${child.exitCode}:\n${said()}`);
    if (await isHealthy(url)) return;
    await new Promise((resolve) => setTimeout(resolve, 100));
  }
  child.kill("SIGKILL");
  throw new Error(`The server was not healthy after ${secondsToStart} s:\n${said()}`);
}

async function isHealthy(url: string): Promise<boolean> {
  try {
    return (await fetch(`${url}/api/health`)).ok;
  } catch {
    // Not listening yet.
    return false;
  }
}

async function freePort(): Promise<number> {
  const probe = createServer().listen(0, "127.0.0.1");
  await once(probe, "listening");
  const address = probe.address();
  probe.close();
  if (address === null || typeof address === "string") throw new Error("The system gave no port.");
  return address.port;
}
