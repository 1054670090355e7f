/** What a form shows for one property of a document's part. Plain data, so that a kind of component is a list of these. */
export type FieldSpec = TextSpec | NumberSpec | ChoiceSpec | OtherSpec | GroupSpec | ListSpec;

interface Base {
  readonly key: string;
  readonly label: string;
  readonly hint?: string;
  /** May be left out of the document; an empty field takes it out. */
  readonly optional?: boolean;
}

export interface TextSpec extends Base {
  readonly type: "text" | "longText";
  /** A designator or terminal: fixed-width type. */
  readonly code?: boolean;
  /** Offered while typing. */
  readonly suggest?: Suggestion;
}

export interface NumberSpec extends Base {
  readonly type: "number";
  readonly unit?: string;
}

export interface ChoiceSpec extends Base {
  readonly type: "choice";
  readonly options: readonly { readonly value: string; readonly label: string }[];
}

/** Lists the draft itself gives. */
export type Suggestion =
  | "choiceConditions"
  | "numberConditions"
  | "components"
  | "modules"
  | "motors"
  | "connectors"
  | "ownTerminals"
  | "ends"
  | "colours"
  | "zones"
  | "points";

export interface OtherSpec extends Base {
  readonly type:
    | "flag"
    /** Names parted by spaces or commas. */
    | "names"
    /** Texts, one a line. */
    | "lines"
    | "expression"
    /** Which terminals a switch joins in each position of its condition. */
    | "positions"
    /** Two node names. */
    | "pair"
    /** What a module's input is pulled to: ground, supply or one of its rails. */
    | "pullTo"
    /** Values of conditions by name. */
    | "conditionValues"
    /** One value, whose kind depends on the condition it belongs to. */
    | "points";
  /** Of "points": what the two columns are. */
  readonly columns?: readonly [string, string];
  /** Of "expression": whether a bare name is a signal. */
  readonly inModule?: boolean;
}

/** An object of its own; an optional one is switched on and off as a whole. */
export interface GroupSpec extends Base {
  readonly type: "group";
  readonly fields: readonly FieldSpec[];
  /** What it starts with when it is switched on. */
  readonly start?: Readonly<Record<string, unknown>>;
}

/** A list of objects, each of one shape, or of one shape for each `kind`. */
export interface ListSpec extends Base {
  readonly type: "list";
  /** What one item is called, for buttons: `input`. */
  readonly item: string;
  /** The property that names an item in its heading. */
  readonly nameKey: string;
  readonly shapes: readonly {
    /** Value of the item's `kind`; absent when all items have one shape. */
    readonly kind?: string;
    readonly label: string;
    readonly start: Readonly<Record<string, unknown>>;
    readonly fields: readonly FieldSpec[];
  }[];
}

type Extra<T> = Partial<Omit<T, "type" | "key" | "label">>;

export const text = (key: string, label: string, extra: Extra<TextSpec> = {}): TextSpec => ({
  type: "text",
  key,
  label,
  ...extra,
});
export const longText = (key: string, label: string, extra: Extra<TextSpec> = {}): TextSpec => ({
  type: "longText",
  key,
  label,
  ...extra,
});
export const number = (key: string, label: string, unit = "", extra: Extra<NumberSpec> = {}): NumberSpec => ({
  type: "number",
  key,
  label,
  ...(unit === "" ? {} : { unit }),
  ...extra,
});
export const choice = (
  key: string,
  label: string,
  options: Readonly<Record<string, string>>,
  extra: Extra<ChoiceSpec> = {},
): ChoiceSpec => ({
  type: "choice",
  key,
  label,
  options: Object.entries(options).map(([value, words]) => ({ value, label: words })),
  ...extra,
});
export const other = (
  type: OtherSpec["type"],
  key: string,
  label: string,
  extra: Extra<OtherSpec> = {},
): OtherSpec => ({ type, key, label, ...extra });
export const group = (
  key: string,
  label: string,
  fields: readonly FieldSpec[],
  extra: Extra<GroupSpec> = {},
): GroupSpec => ({ type: "group", key, label, fields, ...extra });
export const list = (
  key: string,
  label: string,
  rest: Omit<ListSpec, "type" | "key" | "label">,
): ListSpec => ({ type: "list", key, label, ...rest });
