/** Runs once when the server boots: a wrong environment stops it here, before the first person meets it. */
export async function register(): Promise<void> {
  const { allowRequestHostWhenNoUrlIsSet } = await import("./env");
  allowRequestHostWhenNoUrlIsSet();
}
