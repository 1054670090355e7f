import { debianInstall } from "./debian.mjs";
import { StepError } from "./steps.mjs";
import { findPostgresPrograms, startThrowawayPostgres } from "./throwaway-postgres.mjs";

/**
 * A PostgreSQL server for the integration tests: the one named in TEST_DATABASE_URL, or a throw-away one.
 *
 * @returns {Promise<{ url: string, stop: () => Promise<void> }>}
 */
export async function postgresForTests() {
  const named = process.env.TEST_DATABASE_URL;
  if (named) return { url: named, stop: async () => {} };
  const programs =
    findPostgresPrograms(process.env) ??
    ((await debianInstall("postgresql")) ? findPostgresPrograms(process.env) : null);
  if (programs === null) {
    throw new StepError(
      "The integration tests need PostgreSQL: install it, or set TEST_DATABASE_URL to a server whose user may create databases.",
    );
  }
  return startThrowawayPostgres(programs);
}
