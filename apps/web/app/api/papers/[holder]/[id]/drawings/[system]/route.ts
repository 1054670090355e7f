import { drawingToSvg } from "@probeworthy/diagram";
import { attachment } from "@/server/http/attachment";
import { withRoute } from "@/server/http/with-route";
import { titleBlockOf } from "@/server/print/paper-drawing";
import { plexFamilies, readPlex } from "@/server/print/plex";
import { findSystemPapers, sheetParams } from "@/server/services/papers";
import { loadSheet } from "@/server/views/drawings";

/** The types a drawing is set in: they travel with it, as few machines have them. */
const embedded = [
  { family: "mono", weight: 400, part: "latin" },
  { family: "mono", weight: 600, part: "latin" },
  { family: "sans", weight: 400, part: "latin" },
  { family: "sans", weight: 600, part: "latin" },
] as const;

/** The wiring diagram of one system as a file that any drawing program opens. */
export const GET = withRoute({
  auth: "signed_in",
  params: sheetParams,
  rateLimit: { name: "sheets", requests: 120, perSeconds: 60 },
  resource: async ({ user, database, params }) => findSystemPapers(database, user, params),
  handler: async ({ resource: papers, params }) => {
    const { document } = papers;
    const sheet = await loadSheet(papers, params.system);
    const fonts = await Promise.all(
      embedded.map(async ({ family, weight, part }) => ({
        family: plexFamilies[family],
        weight,
        base64: (await readPlex(family, weight, part, "woff2")).toString("base64"),
      })),
    );
    const svg = drawingToSvg(sheet, {
      theme: "light",
      fonts,
      titleBlock: titleBlockOf(sheet, document.title),
    });
    return attachment(svg, `${document.title} ${sheet.title}.svg`, "image/svg+xml; charset=utf-8");
  },
});
