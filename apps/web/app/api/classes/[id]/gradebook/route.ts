import { attemptPolicies, gradebookCsv } from "@probeworthy/gradebook";
import { z } from "zod";
import { teachers } from "@/server/auth/staff";
import { attachment } from "@/server/http/attachment";
import { idParams } from "@/server/http/ids";
import { problem } from "@/server/http/problem";
import { withRoute } from "@/server/http/with-route";
import { findTaughtClass } from "@/server/services/access";
import { toMatrix } from "@/server/views/gradebook-view";

/** The gradebook as a CSV file. */
export const GET = withRoute({
  auth: teachers,
  params: idParams,
  query: z.object({
    policy: z.enum(attemptPolicies).default("best"),
    separator: z.enum([",", ";"]).default(","),
  }),
  resource: async ({ user, database, params }) => findTaughtClass(database, user, params.id),
  handler: async ({ user, database, resource, query }) => {
    const { organisationId } = user;
    const book = await database.grades.gradebook({ organisationId, classId: resource.id });
    if (book === null) throw problem("not_found");
    const csv = gradebookCsv(toMatrix(book, query.policy, new Date()), {
      separator: query.separator,
      decimalComma: query.separator === ";",
    });
    return attachment(csv, `${resource.title} gradebook.csv`);
  },
});
