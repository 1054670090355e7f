import { drawingToSvg } from "@probeworthy/diagram";
import { attachment } from "@/server/http/attachment";
import { withRoute } from "@/server/http/with-route";
import { findSystemPapers, sheetParams } from "@/server/services/papers";
import { loadSheet } from "@/server/views/drawings";

/** The wiring diagram of one system as a file that any drawing program opens. */
export const GET = withRoute({
  auth: "signed_in",
  params: sheetParams,
  rateLimit: { name: "sheets", requests: 120, perSeconds: 60 },
  resource: async ({ user, database, params }) => findSystemPapers(database, user, params),
  handler: async ({ resource: papers, params }) => {
    const { document } = papers;
    const sheet = await loadSheet(papers, params.system);
    const svg = drawingToSvg(sheet, {
      theme: "light",
      titleBlock: {
        title: sheet.title,
        lines: [
          { label: "Vehicle", value: document.title },
          { label: "State", value: "Car in order" },
        ],
      },
    });
    return attachment(svg, `${document.title} ${sheet.title}.svg`, "image/svg+xml; charset=utf-8");
  },
});
