import "server-only";
import type { PaperDrawing, Stroke } from "@probeworthy/diagram";
import PDFDocument from "pdfkit";
import { type PlexFamily, type PlexPart, type PlexWeight, readPlex } from "./plex";
import { margin, type PageSplit, type PaperSize, splitPages } from "./split-pages";
import { woffToSfnt } from "./woff-to-sfnt";

type Pdf = InstanceType<typeof PDFDocument>;

/** PDF measures in points. */
const pointsPerMillimetre = 72 / 25.4;

const faces: readonly { family: PlexFamily; weight: PlexWeight; part: PlexPart }[] = [
  { family: "mono", weight: 400, part: "latin" },
  { family: "mono", weight: 600, part: "latin" },
  { family: "sans", weight: 400, part: "latin" },
  { family: "sans", weight: 600, part: "latin" },
  { family: "sans", weight: 400, part: "greek" },
  { family: "sans", weight: 600, part: "greek" },
];
const nameOf = (family: PlexFamily, weight: PlexWeight, part: PlexPart) => `${family} ${weight} ${part}`;

/** Greek letters, as in Ω, are set in the sans: the mono has none. */
const isGreek = (character: string) => /\p{Script=Greek}/u.test(character);

/** Runs of text that one font file has all characters of. */
function runsOf(text: string): readonly { readonly text: string; readonly part: PlexPart }[] {
  const runs: { text: string; part: PlexPart }[] = [];
  for (const character of text) {
    const part = isGreek(character) ? "greek" : "latin";
    const last = runs.at(-1);
    if (last?.part === part) last.text += character;
    else runs.push({ text: character, part });
  }
  return runs;
}

function write(pdf: Pdf, stroke: Extract<Stroke, { kind: "text" }>): void {
  const weight = stroke.isBold ? 600 : 400;
  const runs = runsOf(stroke.text).map((run) => {
    const font = nameOf(run.part === "greek" ? "sans" : stroke.isMono ? "mono" : "sans", weight, run.part);
    return { ...run, font, width: pdf.font(font).fontSize(stroke.size).widthOfString(run.text) };
  });
  const width = runs.reduce((sum, run) => sum + run.width, 0);
  let x = stroke.x - (stroke.anchor === "end" ? width : stroke.anchor === "middle" ? width / 2 : 0);
  for (const run of runs) {
    pdf.font(run.font).fontSize(stroke.size).fillColor(stroke.colour);
    pdf.text(run.text, x, stroke.y, { lineBreak: false, baseline: "alphabetic" });
    x += run.width;
  }
}

/** Lays one stroke on the page, in the drawing's own px. */
function draw(pdf: Pdf, stroke: Stroke): void {
  if (stroke.kind === "text") {
    write(pdf, stroke);
    return;
  }
  switch (stroke.kind) {
    case "line": {
      const [first, ...rest] = stroke.points;
      if (first === undefined) return;
      pdf.moveTo(first.x, first.y);
      for (const { x, y } of rest) pdf.lineTo(x, y);
      pdf.lineJoin(stroke.isRounded === true ? "round" : "miter");
      break;
    }
    case "rect":
      pdf.rect(stroke.x, stroke.y, stroke.width, stroke.height);
      break;
    case "circle":
      pdf.circle(stroke.x, stroke.y, stroke.radius);
      break;
    case "path":
      pdf.path(stroke.d);
      break;
  }
  const { pen } = stroke;
  const fill = stroke.kind === "line" ? undefined : stroke.fill;
  if (pen !== undefined) {
    pdf.lineWidth(pen.width).strokeColor(pen.colour);
    if (pen.dash === undefined) pdf.undash();
    else pdf.dash(pen.dash[0] ?? 1, { space: pen.dash[1] ?? pen.dash[0] ?? 1 });
  }
  if (fill !== undefined) pdf.fillColor(fill);
  if (fill !== undefined && pen !== undefined) pdf.fillAndStroke();
  else if (fill !== undefined) pdf.fill();
  else pdf.stroke();
}

/** What stands at the foot of a page, so that a stack of them can be put in order. */
function drawFooter(pdf: Pdf, title: string, split: PageSplit, index: number): void {
  const { page, columns, rows, parts } = split;
  const column = (index % columns) + 1;
  const row = Math.floor(index / columns) + 1;
  const place =
    parts.length === 1
      ? ""
      : ` · page ${index + 1} of ${parts.length}: row ${row} of ${rows}, column ${column} of ${columns}`;
  write(pdf, {
    kind: "text",
    x: (page.width - margin) * pointsPerMillimetre,
    y: (page.height - margin) * pointsPerMillimetre,
    text: `${title}${place}`,
    size: 8,
    isMono: false,
    isBold: false,
    anchor: "end",
    colour: "#1F2A37",
  });
}

function joined(chunks: readonly Uint8Array[]): Uint8Array<ArrayBuffer> {
  const whole = new Uint8Array(chunks.reduce((sum, chunk) => sum + chunk.length, 0));
  let at = 0;
  for (const chunk of chunks) {
    whole.set(chunk, at);
    at += chunk.length;
  }
  return whole;
}

/**
 * A drawing as a PDF: lines and text as such, types embedded, on as many pages of the size as it takes to stay legible.
 * The same drawing gives the same pages.
 */
export async function drawingToPdf(drawing: PaperDrawing, size: PaperSize): Promise<Uint8Array<ArrayBuffer>> {
  const split = splitPages(drawing, size);
  const pageSize: [number, number] = [
    split.page.width * pointsPerMillimetre,
    split.page.height * pointsPerMillimetre,
  ];
  const pdf = new PDFDocument({
    size: pageSize,
    margin: 0,
    autoFirstPage: false,
    info: { Title: drawing.title },
  });
  for (const { family, weight, part } of faces) {
    const font = woffToSfnt(new Uint8Array(await readPlex(family, weight, part, "woff")));
    pdf.registerFont(nameOf(family, weight, part), font);
  }
  const chunks: Uint8Array[] = [];
  const finished = new Promise<Uint8Array<ArrayBuffer>>((resolve, reject) => {
    pdf.on("data", (chunk: Uint8Array) => chunks.push(chunk));
    pdf.on("end", () => resolve(joined(chunks)));
    pdf.on("error", reject);
  });
  const scale = split.scale * pointsPerMillimetre;
  split.parts.forEach((part, index) => {
    pdf.addPage({ size: pageSize, margin: 0 });
    const inset = margin * pointsPerMillimetre;
    pdf.save();
    pdf.rect(inset, inset, part.width * scale, part.height * scale).clip();
    pdf.transform(scale, 0, 0, scale, inset - part.x * scale, inset - part.y * scale);
    for (const stroke of drawing.strokes) draw(pdf, stroke);
    pdf.restore();
    drawFooter(pdf, drawing.title, split, index);
  });
  pdf.end();
  return finished;
}
