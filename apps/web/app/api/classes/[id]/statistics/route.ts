import { confusionCsv, itemStatisticsCsv } from "@probeworthy/gradebook";
import { z } from "zod";
import { kindTitle } from "@/features/statistics/kind-title";
import { teachers } from "@/server/auth/staff";
import { attachment } from "@/server/http/attachment";
import { idParams } from "@/server/http/ids";
import { withRoute } from "@/server/http/with-route";
import { findTaughtClass } from "@/server/services/access";
import { loadClassStatistics } from "@/server/services/statistics/class-statistics";

/** Item statistics of a class, or its table of true and named kinds, as a CSV file. */
export const GET = withRoute({
  auth: teachers,
  params: idParams,
  query: z.object({
    table: z.enum(["items", "confusion"]).default("items"),
    separator: z.enum([",", ";"]).default(","),
  }),
  resource: async ({ user, database, params }) => findTaughtClass(database, user, params.id),
  handler: async ({ user, database, resource, query: { table, separator } }) => {
    const { organisationId } = user;
    const { items, confusion } = await loadClassStatistics(database, {
      organisationId,
      classId: resource.id,
    });
    const options = { separator, decimalComma: separator === ";" };
    return table === "items"
      ? attachment(itemStatisticsCsv(items, options), `${resource.title} items.csv`)
      : attachment(
          confusionCsv({ matrix: confusion, titleOf: kindTitle }, options),
          `${resource.title} kinds of fault.csv`,
        );
  },
});
