import { listsInputSchema } from "@/features/authoring/authoring-input";
import { listsPreviewSchema } from "@/features/authoring/authoring-view";
import { vehicleFromLists } from "@/features/authoring/start/vehicle-from-lists";
import { teachers } from "@/server/auth/staff";
import { withRoute } from "@/server/http/with-route";

const count = (list: unknown): number => (Array.isArray(list) ? list.length : 0);

/** What two lists would become; nothing is kept. */
export const POST = withRoute({
  auth: teachers,
  body: listsInputSchema,
  bodyLimitBytes: 2 * 1024 * 1024,
  rateLimit: { name: "preview_lists", requests: 60, perSeconds: 60 },
  handler: async ({ body }) => {
    const { document, messages } = vehicleFromLists("preview", "Preview", body);
    const { components, connectors, conductors } = document;
    return listsPreviewSchema.parse({
      components: count(components),
      connectors: count(connectors),
      conductors: count(conductors),
      messages,
    });
  },
  audit: "nothing_written",
});
