import {
  findPostgresPrograms,
  startThrowawayPostgres,
} from "../../packages/launcher/src/throwaway-postgres.mjs";

/**
 * Global set-up of the integration tests: a PostgreSQL server. `npm test` names one in TEST_DATABASE_URL; by hand
 * a throw-away server is started and stopped again.
 */
export default async function startPostgres(): Promise<() => Promise<void>> {
  if (process.env.TEST_DATABASE_URL) return async () => {};
  const programs = findPostgresPrograms(process.env);
  if (programs === null) {
    throw new Error(
      "The integration tests need PostgreSQL: install it, or set TEST_DATABASE_URL to a server.",
    );
  }
  const { url, stop } = await startThrowawayPostgres(programs);
  process.env.TEST_DATABASE_URL = url;
  return stop;
}
