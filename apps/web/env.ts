import "server-only";
import { z } from "zod";

/** An empty variable means the same as a missing one: shells and compose files leave them empty. */
const optionalText = z.preprocess((value) => (value === "" ? undefined : value), z.string().optional());
const optionalUrl = z.preprocess((value) => (value === "" ? undefined : value), z.url().optional());
const flag = z.preprocess((value) => value === "1" || value === "true", z.boolean());

const environmentSchema = z
  .object({
    NODE_ENV: z.enum(["development", "production", "test"]).default("development"),
    NEXTAUTH_SECRET: z
      .string("is missing: set it to at least 32 random characters")
      .min(32, "needs at least 32 characters"),
    NEXTAUTH_URL: optionalUrl,
    DATABASE_URL: optionalUrl,
    PROBEWORTHY_DATA: optionalText,
    PROBEWORTHY_DEMO: flag,
    PROBEWORTHY_LOG_LEVEL: z.preprocess(
      (value) => (value === "" ? undefined : value),
      z.enum(["fatal", "error", "warn", "info", "debug", "silent"]).default("info"),
    ),
    OIDC_ISSUER: optionalUrl,
    OIDC_CLIENT_ID: optionalText,
    OIDC_CLIENT_SECRET: optionalText,
    OIDC_NAME: optionalText,
  })
  .superRefine((value, context) => {
    const given = [value.OIDC_ISSUER, value.OIDC_CLIENT_ID, value.OIDC_CLIENT_SECRET].filter(
      (part) => part !== undefined,
    ).length;
    if (given !== 0 && given !== 3) {
      context.addIssue({
        code: "custom",
        path: ["OIDC_ISSUER"],
        message: "OIDC_ISSUER, OIDC_CLIENT_ID and OIDC_CLIENT_SECRET go together: set all three or none",
      });
    }
    if (value.DATABASE_URL === undefined && value.PROBEWORTHY_DATA === undefined) {
      context.addIssue({
        code: "custom",
        path: ["PROBEWORTHY_DATA"],
        message: "is missing: name the data folder, or set DATABASE_URL to a PostgreSQL server",
      });
    }
  });

export type Environment = z.infer<typeof environmentSchema>;

/** @throws Error naming every variable that is wrong and what would be right. */
export function parseEnvironment(source: Readonly<Record<string, string | undefined>>): Environment {
  const result = environmentSchema.safeParse(source);
  if (result.success) return result.data;
  const lines = result.error.issues.map((issue) => `  ${issue.path.join(".")} ${issue.message}`);
  throw new Error(`The environment is not complete:\n${lines.join("\n")}`);
}

let cached: Environment | undefined;

/** The checked environment. Read on first use, not at import, so that a build needs no secrets. */
export function env(): Environment {
  cached ??= parseEnvironment(process.env);
  return cached;
}

/** Safe during a build and in the proxy, where secrets may be absent. */
export const isDevelopment = process.env.NODE_ENV === "development";

/**
 * next-auth 4 builds its own addresses from NEXTAUTH_URL. Without one (a classroom server on whatever port was free)
 * it must use the host the browser asked for; it reads that permission from the environment.
 */
export function allowRequestHostWhenNoUrlIsSet(): void {
  if (env().NEXTAUTH_URL === undefined) process.env.AUTH_TRUST_HOST = "true";
}
