import { resolve } from "node:path";
import { parseArgs } from "node:util";

/** First port tried when none is asked for; the next few are tried when it is taken. */
export const defaultPort = 4310;

export const testSteps = /** @type {const} */ ([
  "lint",
  "types",
  "unit",
  "reference",
  "contract",
  "integration",
  "e2e",
]);

/** @typedef {(typeof testSteps)[number]} TestStep */

/**
 * @typedef {object} StartArguments
 * @property {number | null} port null: the default, or the next free one
 * @property {string} host
 * @property {string} data absolute path of the data folder
 * @property {boolean} demo put the demo into an empty database
 */

/**
 * @template Value
 * @typedef {{ ok: true, value: Value } | { ok: false, error: string }} Parsed
 */

export const startUsage = `npm start -- [--port N] [--data DIR] [--host H] [--no-demo]
  --port N     port to serve on (${defaultPort}, or the next free one)
  --data DIR   folder for the database and the server's secret (.data)
  --host H     address to serve on (127.0.0.1: this computer only)
  --no-demo    leave an empty database empty
  DATABASE_URL in the environment: use this PostgreSQL server instead of the built-in database`;

/**
 * @param {string[]} argv
 * @param {string} cwd folder that relative paths start from
 * @returns {Parsed<StartArguments | "help">}
 */
export function parseStartArguments(argv, cwd) {
  let values;
  try {
    ({ values } = parseArgs({
      args: argv,
      options: {
        port: { type: "string" },
        data: { type: "string" },
        host: { type: "string" },
        "no-demo": { type: "boolean" },
        help: { type: "boolean", short: "h" },
      },
    }));
  } catch (error) {
    return { ok: false, error: error instanceof Error ? error.message : String(error) };
  }
  if (values.help) return { ok: true, value: "help" };
  const port = values.port === undefined ? null : parsePort(values.port);
  if (Number.isNaN(port))
    return { ok: false, error: `--port needs a number from 1 to 65535, not "${values.port}".` };
  if (values.host === "")
    return { ok: false, error: "--host needs an address, such as 127.0.0.1 or 0.0.0.0." };
  if (values.data === "") return { ok: false, error: "--data needs a folder." };
  return {
    ok: true,
    value: {
      port,
      host: values.host ?? "127.0.0.1",
      data: resolve(cwd, values.data ?? ".data"),
      demo: values["no-demo"] !== true,
    },
  };
}

/** @param {string} text */
function parsePort(text) {
  const port = Number(text);
  return /^\d+$/.test(text) && port >= 1 && port <= 65_535 ? port : Number.NaN;
}

/**
 * @param {string[]} argv
 * @returns {Parsed<TestStep[]>} the steps to run, in the order they always run in
 */
export function parseTestArguments(argv) {
  let values;
  try {
    ({ values } = parseArgs({ args: argv, options: { only: { type: "string" } } }));
  } catch (error) {
    return { ok: false, error: error instanceof Error ? error.message : String(error) };
  }
  if (values.only === undefined) return { ok: true, value: [...testSteps] };
  const wanted = values.only.split(",").map((name) => name.trim());
  const unknown = wanted.find((name) => !testSteps.some((step) => step === name));
  if (unknown !== undefined) {
    return { ok: false, error: `There is no test step "${unknown}"; the steps are ${testSteps.join(", ")}.` };
  }
  return { ok: true, value: testSteps.filter((step) => wanted.includes(step)) };
}
