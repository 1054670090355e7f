/** Paper sizes, landscape, mm (ISO 216). */
export const paperSizes = { A4: { width: 297, height: 210 }, A3: { width: 420, height: 297 } } as const;

export type PaperSize = keyof typeof paperSizes;

/** Kept free along every edge, mm: what office printers cannot reach, and room for a line of text at the foot. */
export const margin = 8;
export const footer = 6;
/** What two neighbouring pages both show, mm, to lay them together by. */
const overlap = 10;
/** The smallest writing of a drawing is 11 px high. Below 1.6 mm on paper it is no longer read at arm's length. */
const smallestScale = 1.6 / 11;

/** One page: which part of the drawing it shows, px. */
export interface PagePart {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export interface PageSplit {
  /** mm on paper for one px of the drawing. */
  readonly scale: number;
  readonly page: { readonly width: number; readonly height: number };
  readonly columns: number;
  readonly rows: number;
  /** Row by row, from the left. */
  readonly parts: readonly PagePart[];
}

/**
 * How a drawing goes on paper: on one page where its writing stays legible, else on as few pages as it takes, side by
 * side and one below the other, as large as they allow.
 */
export function splitPages(
  drawing: { readonly width: number; readonly height: number },
  size: PaperSize,
): PageSplit {
  const { width, height } = paperSizes[size];
  const choices = [
    { width, height },
    { width: height, height: width },
  ].map((page) => fit(drawing, page));
  const [first, second] = choices;
  if (first === undefined || second === undefined) throw new Error("a page lies or stands");
  const pages = (split: PageSplit) => split.parts.length;
  return pages(first) < pages(second) || (pages(first) === pages(second) && first.scale >= second.scale)
    ? first
    : second;
}

function fit(
  drawing: { readonly width: number; readonly height: number },
  page: { readonly width: number; readonly height: number },
): PageSplit {
  const room = { width: page.width - 2 * margin, height: page.height - 2 * margin - footer };
  const count = (length: number, available: number) =>
    Math.max(1, Math.ceil((length * smallestScale - overlap) / (available - overlap)));
  const [columns, rows] = [count(drawing.width, room.width), count(drawing.height, room.height)];
  const reach = (available: number, pages: number) => available * pages - overlap * (pages - 1);
  const scale = Math.min(
    reach(room.width, columns) / drawing.width,
    reach(room.height, rows) / drawing.height,
    // Larger than on the screen helps nobody.
    0.265,
  );
  const shown = { width: room.width / scale, height: room.height / scale };
  const step = overlap / scale;
  const parts = Array.from({ length: rows }, (_, row) =>
    Array.from({ length: columns }, (__, column) => ({
      x: column * (shown.width - step),
      y: row * (shown.height - step),
      width: Math.min(shown.width, drawing.width - column * (shown.width - step)),
      height: Math.min(shown.height, drawing.height - row * (shown.height - step)),
    })),
  ).flat();
  return { scale, page, columns, rows, parts };
}
