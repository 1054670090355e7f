/**
 * The geometry of a drawn sheet. Plain JSON: one unit is one CSS pixel at zoom 1, x to the right, y down.
 * A renderer needs nothing but this: every symbol carries the strokes it is made of.
 *
 * Beside it: `drawingToSvg` (stand-alone SVG), `layoutPlacePlan` (component-place plan) and `connectorFace` (both sides)
 * from the package itself; `layoutDrawing` from `/layout` once and `placeOnDrawing` or `dragOnDrawing` from `/placing`
 * for every step of a drag; `traceConductor` from `/trace`.
 */

export interface Position {
  readonly x: number;
  readonly y: number;
}

export interface Box extends Position {
  readonly width: number;
  readonly height: number;
}

export type Side = "top" | "bottom";

/** `ink` a drawn line · `fine` a thinner one · `dashed` a boundary · `rail` a supply rail or splice bar. */
export type StrokeRole = "ink" | "fine" | "dashed" | "rail";
export type FillRole = "none" | "paper" | "ink";
export type TextRole = "designator" | "title" | "terminal" | "function" | "cavity" | "rating" | "zone";
export type TextAnchor = "start" | "middle" | "end";

export type Primitive =
  | { readonly kind: "line"; readonly points: readonly Position[]; readonly stroke: StrokeRole }
  | {
      readonly kind: "rect";
      readonly x: number;
      readonly y: number;
      readonly width: number;
      readonly height: number;
      readonly stroke: StrokeRole;
      readonly fill: FillRole;
    }
  | {
      readonly kind: "circle";
      readonly x: number;
      readonly y: number;
      readonly radius: number;
      readonly stroke: StrokeRole;
      readonly fill: FillRole;
    }
  | { readonly kind: "path"; readonly d: string; readonly stroke: StrokeRole; readonly fill: FillRole }
  | {
      readonly kind: "text";
      /** Left, middle or right of the text after `anchor`; y is the baseline. */
      readonly x: number;
      readonly y: number;
      readonly text: string;
      readonly role: TextRole;
      readonly anchor: TextAnchor;
    };

export type SymbolKind =
  | "battery"
  | "chargingSource"
  | "fuse"
  | "switch"
  | "relay"
  | "resistor"
  | "lamp"
  | "twoFilamentLamp"
  | "ledLamp"
  | "diode"
  | "motor"
  | "torqueSensor"
  | "positionSensor"
  | "activeSpeedSensor"
  | "passiveSpeedSensor"
  | "thermistor"
  | "composed"
  | "passive"
  | "module"
  | "splice"
  | "ground"
  | "rail"
  | "body";

export interface SheetTerminal {
  readonly name: string;
  readonly function?: string;
  readonly x: number;
  readonly y: number;
  readonly side: Side;
  /** Electrical point id of the terminal, `A1:T1`: what a colouring by potential asks for. */
  readonly pointOf?: string;
}

export interface SheetSymbol extends Box {
  /** Designator of the component, splice or ground point; `30` for the supply rail, `body` for the body metal. */
  readonly id: string;
  readonly kind: SymbolKind;
  readonly designator: string;
  readonly title: string;
  readonly place?: string;
  /** Not every terminal of the component is on this sheet. */
  readonly partial: boolean;
  /** Only where `partial`: how many terminals are elsewhere, and the ids of the systems whose sheets list it. */
  readonly more?: { readonly terminals: number; readonly systems: readonly string[] };
  /** The component that is drawn; absent for splices, grounds, rails and the body. */
  readonly component?: string;
  readonly terminals: readonly SheetTerminal[];
  readonly primitives: readonly Primitive[];
  /** Only for fuses: what is drawn besides `primitives` while the fuse is in its holder, and while it is out. */
  readonly fitted?: readonly Primitive[];
  readonly pulled?: readonly Primitive[];
}

export interface ConductorLabel extends Position {
  readonly anchor: TextAnchor;
  /** Colour code first; number and cross-section follow where there is room. One line each, 13 units apart. */
  readonly lines: readonly string[];
}

export interface SheetConductor {
  readonly id: string;
  /** Base colour and, if there is one, stripe: IEC 60757 codes. */
  readonly colour: readonly [string] | readonly [string, string];
  readonly squareMillimetres: number;
  /** Where it comes from and goes to, in the document's own notation. */
  readonly from: string;
  readonly to: string;
  readonly twistedPair?: string;
  /** Electrical point ids of its two ends, as drawn from the first of `points` to the last. */
  readonly pointOf?: readonly [string, string];
  readonly points: readonly Position[];
  /** At least one; a long conductor is labelled near both ends. */
  readonly labels: readonly ConductorLabel[];
}

export interface SheetCavity {
  readonly cavity: string;
  readonly x: number;
  /** Where the conductor's terminal sits, and what it meets: the component's pin or the second wired face. */
  readonly harness: Position;
  readonly facing: Position;
  /** The point ids of both faces. */
  readonly harnessPoint: string;
  readonly facingPoint: string;
  readonly conductor?: string;
}

/** One drawn part of a connector: a connector whose cavities lie on both sides of a component has two. */
export interface SheetConnector {
  readonly id: string;
  readonly title: string;
  readonly place?: string;
  readonly component?: string;
  /** Side of the component it is drawn on; for an in-line connector the side of its harness face. */
  readonly side: Side;
  readonly cavities: readonly SheetCavity[];
  /** The boundary between the two faces. */
  readonly from: Position;
  readonly to: Position;
  readonly label: Position & { readonly anchor: TextAnchor };
  /** Which face of an in-line connector is above, else undefined. */
  readonly inline: boolean;
}

export type SheetPointKind =
  | "harness"
  | "component"
  | "fuseSocket"
  | "fuseBlade"
  | "post"
  | "ring"
  | "bareMetal";

export interface SheetTestPoint extends Position {
  readonly pointId: string;
  readonly kind: SheetPointKind;
  readonly owner: string;
  /** The way a lead comes in without covering the symbol. */
  readonly side: Side;
  /** Drawn only while this connector is apart, or this fuse out of its holder. */
  readonly onlyWhenApart?: string;
}

/** Sheet zones after ISO 5457: numbers along the top from left to right, letters (without I and O) from top to bottom. */
export interface SheetZones {
  /** The frame; zone marks stand between it and the sheet's edge. */
  readonly frame: Box;
  readonly columns: number;
  readonly rows: number;
}

/**
 * What goes on elsewhere: an arrow at the end of a conductor, at a splice or at a bar. Its strokes and words are in
 * `primitives`; the web puts a link over `box`.
 */
export interface SheetReference {
  readonly id: string;
  /** The tip the conductor or bar ends at. */
  readonly at: Position;
  readonly box: Box;
  /** Id and title of the system to jump to; the further systems that show the same designator in `systems`. */
  readonly toSystem: string;
  readonly title: string;
  readonly systems: readonly string[];
  /** The component, splice or ground point it goes on at, and the terminal or cavity where there is one. */
  readonly toDesignator: string;
  readonly toTerminal?: string;
  /** The conductor that leaves; absent at a splice or bar. */
  readonly conductor?: string;
  readonly primitives: readonly Primitive[];
}

/** The mark of a twisted pair across its two conductors, drawn over them. */
export interface SheetTwist {
  readonly pair: string;
  readonly conductors: readonly [string, string];
  readonly primitives: readonly Primitive[];
}

export interface Sheet {
  readonly title: string;
  readonly width: number;
  readonly height: number;
  readonly symbols: readonly SheetSymbol[];
  readonly conductors: readonly SheetConductor[];
  readonly connectors: readonly SheetConnector[];
  readonly testPoints: readonly SheetTestPoint[];
  /** Lines that are no conductor: a battery post up to its rail, a stud that several conductors share. */
  readonly links: readonly { readonly id: string; readonly points: readonly Position[] }[];
  readonly zones: SheetZones;
  /** Absent on sheets drawn before there were any; empty when nothing leaves the sheet. */
  readonly references?: readonly SheetReference[];
  readonly twists?: readonly SheetTwist[];
}
