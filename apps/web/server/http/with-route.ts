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
  recordAudit: async ({ user, organisationId, action, resourceType, resourceId, detail }) => {
    const organisation = organisationId ?? user?.organisationId;
    if (organisation === undefined) {
      throw new Error(`The audit row of ${action} must name an organisation: nobody is signed in.`);
    }
    const { audit } = await database();
    await audit.append({
      organisationId: organisation,
      actorId: user?.userId ?? null,
      action,
      resourceType,
      resourceId: resourceId ?? null,
      detail: detail ?? {},
      at: new Date(),
    });
  },
  logError: ({ error, ...entry }) => logger().error({ ...entry, err: error }, "request failed"),
  publicUrl: () => env().NEXTAUTH_URL,
  newRequestId: () => crypto.randomUUID(),
});
