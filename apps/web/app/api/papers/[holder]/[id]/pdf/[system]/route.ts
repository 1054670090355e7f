import { drawingStrokes } from "@probeworthy/diagram";
import { z } from "zod";
import { attachment } from "@/server/http/attachment";
import { withRoute } from "@/server/http/with-route";
import { titleBlockOf } from "@/server/print/paper-drawing";
import { drawingToPdf } from "@/server/print/sheet-to-pdf";
import { findSystemPapers, sheetParams } from "@/server/services/papers";
import { loadSheet } from "@/server/views/drawings";

const pdfQuery = z.object({ size: z.enum(["A4", "A3"]).default("A3") });

/** The wiring diagram of one system as a PDF for the printer, on as many pages as keep it legible. */
export const GET = withRoute({
  auth: "signed_in",
  params: sheetParams,
  query: pdfQuery,
  rateLimit: { name: "sheets", requests: 120, perSeconds: 60 },
  resource: async ({ user, database, params }) => findSystemPapers(database, user, params),
  handler: async ({ resource: papers, params, query }) => {
    const { document } = papers;
    const sheet = await loadSheet(papers, params.system);
    const drawing = drawingStrokes(sheet, {
      theme: "light",
      paper: "#FFFFFF",
      titleBlock: titleBlockOf(sheet, document.title),
    });
    const pdf = await drawingToPdf(drawing, query.size);
    return attachment(pdf, `${document.title} ${sheet.title}.pdf`, "application/pdf");
  },
});
