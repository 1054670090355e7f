import { potentialsInputSchema } from "@/features/potentials/potentials-view";
import { staff } from "@/server/auth/staff";
import { problem } from "@/server/http/problem";
import { withRoute } from "@/server/http/with-route";
import { findPapers, paperParams } from "@/server/services/papers";
import { attemptPotentials, livePotentials, mayLookInto } from "@/server/services/potentials";
import { loadSheet } from "@/server/views/drawings";

/** Volts and amps on one sheet: of any car for staff, of an attempt's car once its fault may be seen. */
export const POST = withRoute({
  auth: "signed_in",
  params: paperParams,
  body: potentialsInputSchema,
  rateLimit: { name: "potentials", requests: 120, perSeconds: 60 },
  resource: async ({ user, database, params }) => findPapers(database, user, params),
  handler: async ({ user, resource, body }) => {
    const { document, record } = resource;
    if (!document.systems.some(({ id }) => id === body.system)) throw problem("not_found");
    if ((body.of === "attempt") !== (record !== undefined)) {
      throw problem("refused", { reason: "other_holder", detail: "These are the papers of something else." });
    }
    // The gate comes before anything of the car is worked out.
    if (
      record !== undefined &&
      !mayLookInto(
        record,
        staff.some((role) => role === user.role),
        new Date(),
      )
    ) {
      throw problem("refused", {
        reason: "kept_back",
        detail: "The car can be looked into once its result is let out.",
      });
    }
    const sheet = await loadSheet(resource, body.system);
    const done =
      body.of === "attempt" && record !== undefined
        ? attemptPotentials(resource, record, sheet, body.line)
        : body.of === "vehicle"
          ? livePotentials(resource, sheet, body.conditions, body.faults)
          : undefined;
    if (done === undefined) throw new Error("an attempt's papers come with its record");
    if (!done.ok) throw problem("refused", { reason: "unsolvable", detail: done.message });
    return done.value;
  },
  audit: "nothing_written",
});
