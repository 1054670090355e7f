import { chartInputSchema } from "@/features/charts/chart-input";
import { teachers } from "@/server/auth/staff";
import { idParams } from "@/server/http/ids";
import { problem } from "@/server/http/problem";
import { withRoute } from "@/server/http/with-route";
import { checkUploadedChart } from "@/server/services/charts/check-uploaded-chart";
import { loadLatestVehicle } from "@/server/services/scenarios/find-scenario";

export const POST = withRoute({
  auth: teachers,
  params: idParams,
  body: chartInputSchema,
  bodyLimitBytes: 1024 * 1024,
  rateLimit: { name: "check_chart", requests: 20, perSeconds: 60 },
  resource: async ({ user, database, params }) => loadLatestVehicle(database, user.organisationId, params.id),
  handler: async ({ user, database, resource, body }) => {
    const done = await checkUploadedChart(database, user, resource, body);
    if (done.ok) return done.value;
    if (done.error.code === "unreadable") {
      throw problem("invalid_input", {
        detail: "The chart was not saved. Correct these places and send it again.",
        reason: "unreadable_chart",
        errors: done.error.errors,
      });
    }
    throw problem("refused", { reason: "unsolvable", detail: done.error.message });
  },
  audit: ({ params, answer, body }) => ({
    action: "vehicle.chart_checked",
    resourceType: "vehicle",
    resourceId: params.id,
    detail: { chartId: answer.id, name: body.name, rows: answer.rows, differs: answer.differs },
  }),
});
