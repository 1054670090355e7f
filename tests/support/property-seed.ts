import fc from "fast-check";

/**
 * Properties draw the same examples in every run, so that a red build says what a change has broken and nothing else.
 * PROBEWORTHY_SEED takes another whole number, or `random` to look for new ones; what is found becomes a named test.
 */
const wanted = process.env.PROBEWORTHY_SEED ?? "20261125";
if (wanted !== "random") {
  const seed = Number(wanted);
  if (!Number.isInteger(seed))
    throw new Error(`PROBEWORTHY_SEED must be a whole number or random, not ${wanted}.`);
  fc.configureGlobal({ ...fc.readConfigureGlobal(), seed });
}
