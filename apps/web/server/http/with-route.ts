import "server-only";
import { env } from "@/env";
import { currentUser } from "../auth/session";
import { database } from "../database";
import { logger } from "../logger";
import { createWithRoute } from "./create-with-route";
import { takeFromBudget } from "./rate-limit";

/** The wrapper of every API route, tied to this server's session, database, budgets and log. */
export const withRoute = createWithRoute({
  currentUser,
  database,
  takeFromBudget,
  recordAudit: async ({ user, ...entry }) => {
    if (user === undefined) return;
    const { audit } = await database();
    await audit.record({ organisationId: user.organisationId, actorId: user.userId, ...entry });
  },
  logError: ({ error, ...entry }) => logger().error({ ...entry, err: error }, "request failed"),
  publicUrl: () => env().NEXTAUTH_URL,
  newRequestId: () => crypto.randomUUID(),
});
