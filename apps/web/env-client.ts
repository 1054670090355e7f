import { z } from "zod";

/** Only what may be seen by anybody: Next.js inlines these values into the browser's bundle at build. */
export const clientEnv = z
  .object({ mode: z.enum(["development", "production", "test"]).default("production") })
  .parse({ mode: process.env.NODE_ENV });
