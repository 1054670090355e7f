import type { Position, TextAnchor } from "../geometry";

/** How an outline is drawn; widths and dashes in px. */
export interface Pen {
  readonly colour: string;
  readonly width: number;
  readonly dash?: readonly number[];
}

/** What a drawing on paper consists of: shapes in settled colours, in the order they are laid on. Lengths in px. */
export type Stroke =
  | {
      readonly kind: "line";
      readonly points: readonly Position[];
      readonly pen: Pen;
      readonly isRounded?: boolean;
    }
  | {
      readonly kind: "rect";
      readonly x: number;
      readonly y: number;
      readonly width: number;
      readonly height: number;
      readonly fill?: string;
      readonly pen?: Pen;
    }
  | {
      readonly kind: "circle";
      readonly x: number;
      readonly y: number;
      readonly radius: number;
      readonly fill?: string;
      readonly pen?: Pen;
    }
  | { readonly kind: "path"; readonly d: string; readonly fill?: string; readonly pen?: Pen }
  | {
      readonly kind: "text";
      /** Left, middle or right of the text after `anchor`; y is the baseline. */
      readonly x: number;
      readonly y: number;
      readonly text: string;
      readonly size: number;
      readonly isMono: boolean;
      readonly isBold: boolean;
      readonly anchor: TextAnchor;
      readonly colour: string;
    };

type TextStroke = Extract<Stroke, { kind: "text" }>;

/** One text; regular unless it says otherwise. */
export const textStroke = (
  { x, y }: Position,
  text: string,
  look: Pick<TextStroke, "size" | "isMono" | "anchor" | "colour"> & { readonly isBold?: boolean },
): Stroke => ({ kind: "text", x, y, text, isBold: false, ...look });
