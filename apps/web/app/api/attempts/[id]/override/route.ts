import { overrideInputSchema } from "@/features/review/override-input";
import { staff } from "@/server/auth/staff";
import { idParams } from "@/server/http/ids";
import { problem } from "@/server/http/problem";
import { withRoute } from "@/server/http/with-route";
import { findReviewableAttempt } from "@/server/services/access";
import { overrideGrade } from "@/server/services/review/override-grade";

export const POST = withRoute({
  auth: staff,
  params: idParams,
  body: overrideInputSchema,
  resource: async ({ user, database, params }) => findReviewableAttempt(database, user, params.id),
  handler: async ({ user, database, resource, body }) => {
    const done = await overrideGrade(database, user, { attemptId: resource.id, ...body, now: new Date() });
    if (!done.ok) throw problem("refused", { reason: done.error.code, detail: done.error.message });
  },
  // The decision is an append-only row, written with its audit row in one transaction.
  audit: "own_log",
});
