// Progress a person can follow: a line when a step begins, and how long it took.

/** A step that failed: which, why (the tail of its output), and what to do about it. */
export class StepError extends Error {
  /**
   * @param {string} message what failed, in one sentence
   * @param {{ output?: string, advice?: string }} [detail]
   */
  constructor(message, { output = "", advice = "" } = {}) {
    super(message);
    this.name = "StepError";
    this.output = output;
    this.advice = advice;
  }
}

const began = Date.now();

/** @param {string} text */
export function say(text) {
  const seconds = ((Date.now() - began) / 1000).toFixed(1).padStart(6);
  process.stdout.write(`[${seconds} s] ${text}\n`);
}

/**
 * @template Value
 * @param {string} title
 * @param {() => Promise<Value>} work
 * @returns {Promise<Value>}
 */
export async function step(title, work) {
  say(`${title} …`);
  const start = Date.now();
  const value = await work();
  const seconds = (Date.now() - start) / 1000;
  if (seconds >= 1) say(`${title}: done in ${seconds.toFixed(1)} s`);
  return value;
}

/** @param {unknown} error */
export function reportFailure(error) {
  if (!(error instanceof StepError)) {
    process.stderr.write(`\n${error instanceof Error ? (error.stack ?? error.message) : String(error)}\n`);
    return;
  }
  const parts = [`\n${error.message}`];
  if (error.output !== "") parts.push(indent(tail(error.output, 30)));
  if (error.advice !== "") parts.push(error.advice);
  process.stderr.write(`${parts.join("\n\n")}\n`);
}

/**
 * @param {string} text
 * @param {number} lines
 */
export const tail = (text, lines) => text.trimEnd().split("\n").slice(-lines).join("\n");

/** @param {string} text */
const indent = (text) => text.replace(/^/gm, "  | ");
