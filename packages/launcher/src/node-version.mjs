/** The oldest Node that everything here runs on. package.json says the same to npm. */
export const oldestNode = "20.19.0";

/**
 * @param {string} version such as "20.20.2"
 * @param {string} oldest
 * @returns {string | null} what is wrong, in one sentence; null when the version will do
 */
export function nodeVersionProblem(version, oldest = oldestNode) {
  if (compareVersions(version, oldest) >= 0) return null;
  return `Probeworthy needs Node ${oldest} or newer, and this is Node ${version}: install a newer one from https://nodejs.org.`;
}

/**
 * @param {string} a
 * @param {string} b
 * @returns {number} negative when a is older
 */
export function compareVersions(a, b) {
  const [left, right] = [a, b].map((version) => version.split(/[.-]/).slice(0, 3).map(Number));
  for (const index of [0, 1, 2]) {
    const difference = (left?.[index] ?? 0) - (right?.[index] ?? 0);
    if (difference !== 0) return difference;
  }
  return 0;
}
