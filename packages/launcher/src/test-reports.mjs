// Counts of passed and failed tests from the machine-readable reports of the test runners.

/** @typedef {{ passed: number, failed: number }} Counts */

/**
 * Vitest's JSON report. A test that was skipped or never ran counts as failed: nothing here skips tests, so it
 * means that a set-up broke. A file that could not even be collected counts as one failure.
 *
 * @param {unknown} report
 * @returns {Counts}
 */
export function countVitest(report) {
  const { testResults } =
    /** @type {{ testResults: { status: string, assertionResults: { status: string }[] }[] }} */ (report);
  let passed = 0;
  let failed = 0;
  for (const file of testResults) {
    const good = file.assertionResults.filter(({ status }) => status === "passed").length;
    const bad = file.assertionResults.length - good;
    passed += good;
    failed += bad === 0 && file.status === "failed" ? 1 : bad;
  }
  return { passed, failed };
}

/**
 * Playwright's JSON report: expected outcomes passed; unexpected, flaky and skipped ones did not.
 *
 * @param {unknown} report
 * @returns {Counts}
 */
export function countPlaywright(report) {
  const { stats, errors } =
    /** @type {{ stats: { expected: number, unexpected: number, flaky: number, skipped: number }, errors: unknown[] }} */ (
      report
    );
  const bad = stats.unexpected + stats.flaky + stats.skipped;
  return { passed: stats.expected, failed: bad === 0 && errors.length > 0 ? 1 : bad };
}

/**
 * What a test step contributes. Ending badly without a failed test (a crash, a broken configuration) is a failure,
 * and so is a step in which no test ran: a suite that has gone missing must not look green.
 *
 * @param {Counts} counts
 * @param {number} exitCode
 * @returns {Counts}
 */
export function stepOutcome({ passed, failed }, exitCode) {
  const silent = failed === 0 && (exitCode !== 0 || passed === 0);
  return { passed, failed: silent ? 1 : failed };
}
