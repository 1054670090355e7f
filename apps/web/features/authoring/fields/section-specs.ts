import { choice, type FieldSpec, list, longText, number, other, text } from "./field-spec";

export const sectionNames = [
  "components",
  "connectors",
  "conductors",
  "splices",
  "groundPoints",
  "conditions",
  "systems",
  "symptoms",
] as const;
export type SectionName = (typeof sectionNames)[number];

export interface SectionSpec {
  readonly title: string;
  /** One of them, for buttons: `conductor`. */
  readonly item: string;
  /** The property that names a row. */
  readonly nameKey: "id" | "name";
  /** What is edited in the row itself. */
  readonly columns: readonly FieldSpec[];
  /** What is edited in the form under the row; with `kinds` these come after the kind's own. */
  readonly fields: readonly FieldSpec[];
  readonly empty: string;
  /** What a new row starts with beside its name. */
  readonly start: Readonly<Record<string, unknown>>;
  /** Letters of its designators. */
  readonly letter: string;
}

const id = text("id", "Designator", { code: true });
const title = text("title", "Title");
const place: FieldSpec = text("place", "Place", { optional: true, hint: "In shop words." });
const zone: FieldSpec = text("zone", "Field of the plan", { optional: true, suggest: "zones" });

export const conditionKinds: Readonly<Record<"choice" | "number", readonly FieldSpec[]>> = {
  choice: [
    list("options", "Options", {
      item: "option",
      nameKey: "value",
      shapes: [
        {
          label: "Option",
          start: { value: "option", title: "Option" },
          fields: [text("value", "Name", { code: true }), text("title", "Title")],
        },
      ],
    }),
    text("initial", "Starts as", { code: true }),
  ],
  number: [
    text("unit", "Unit"),
    number("minimum", "From"),
    number("maximum", "To"),
    number("step", "Step"),
    number("initial", "Starts at"),
    other("flag", "fixed", "Set by the world: shown, not offered", { optional: true }),
    {
      type: "group",
      key: "onlyWhen",
      label: "Only while another condition has a value",
      optional: true,
      start: { condition: "key", is: ["on"] },
      fields: [
        text("condition", "Condition", { code: true, suggest: "choiceConditions" }),
        other("names", "is", "Has one of", { hint: "Parted by spaces. Otherwise the value is its lowest." }),
      ],
    },
  ],
};

export const sectionSpecs: Readonly<Record<SectionName, SectionSpec>> = {
  components: {
    title: "Components",
    item: "component",
    nameKey: "id",
    columns: [id, title, place],
    fields: [zone],
    empty: "Start with the battery: choose its kind below and add it.",
    start: {},
    letter: "E",
  },
  connectors: {
    title: "Connectors",
    item: "connector",
    nameKey: "id",
    columns: [
      id,
      title,
      text("component", "Plugs into", { code: true, optional: true, suggest: "components" }),
      number("rows", "Rows"),
      number("columns", "Columns"),
      place,
    ],
    fields: [
      text("housing", "Housing colour", { optional: true }),
      zone,
      list("cavities", "Cavities", {
        item: "cavity",
        nameKey: "cavity",
        shapes: [
          {
            label: "Cavity",
            start: { cavity: "1" },
            fields: [
              text("cavity", "Cavity", { code: true }),
              text("terminal", "Terminal behind it", {
                code: true,
                optional: true,
                suggest: "ownTerminals",
                hint: "Of the component it plugs into.",
              }),
              number("contactOhms", "Contact", "Ω", { optional: true, hint: "Empty: 0.004." }),
            ],
          },
        ],
      }),
    ],
    empty:
      "A component can be wired to its terminals (F1:1) without a connector. Add connectors where a plug can be parted.",
    start: { title: "", rows: 1, columns: 2, cavities: [{ cavity: "1" }, { cavity: "2" }] },
    letter: "X",
  },
  conductors: {
    title: "Conductors",
    item: "conductor",
    nameKey: "id",
    columns: [
      id,
      text("from", "From", { code: true, suggest: "ends" }),
      text("to", "To", { code: true, suggest: "ends" }),
      text("colour", "Colour", { code: true, suggest: "colours" }),
      number("squareMillimetres", "mm²"),
      number("metres", "Length, m"),
      text("twistedPair", "Twisted pair", { code: true, optional: true }),
    ],
    fields: [],
    empty: "A conductor goes from one end to another: X2.5, XS1, XE1 or a terminal such as G1:+.",
    start: { from: "", to: "", colour: "BK", squareMillimetres: 1, metres: 1 },
    letter: "W",
  },
  splices: {
    title: "Splices",
    item: "splice",
    nameKey: "id",
    columns: [id, text("title", "Title", { optional: true }), place, zone],
    fields: [],
    empty: "Where several conductors are joined without a plug.",
    start: {},
    letter: "XS",
  },
  groundPoints: {
    title: "Ground points",
    item: "ground point",
    nameKey: "id",
    columns: [
      id,
      title,
      place,
      zone,
      number("contactOhms", "Ring to body, Ω", "", { optional: true, hint: "Empty: 0.0003." }),
    ],
    fields: [],
    empty: "A vehicle needs one at least: where the battery's minus meets the body.",
    start: { title: "Body ground" },
    letter: "XE",
  },
  conditions: {
    title: "Conditions",
    item: "condition",
    nameKey: "name",
    columns: [text("name", "Name", { code: true }), title, text("group", "Heading", { optional: true })],
    fields: [],
    empty: "What a technician can set: key, light switch, engine speed.",
    start: {},
    letter: "",
  },
  systems: {
    title: "Systems",
    item: "system",
    nameKey: "id",
    columns: [text("id", "Name", { code: true }), title, other("names", "components", "Components")],
    fields: [
      list("howItWorks", "How it works", {
        item: "part of the text",
        nameKey: "title",
        shapes: [
          {
            label: "Part of the text",
            start: { title: "", paragraphs: [""] },
            fields: [
              text("title", "Heading"),
              other("lines", "paragraphs", "Paragraphs", { hint: "One a line." }),
            ],
          },
        ],
      }),
      other("lines", "normalSurprises", "Normal, though it looks like a fault", { hint: "One a line." }),
      other("lines", "cautions", "Cautions", { hint: "One a line." }),
      list("chart", "Terminal chart", {
        item: "row",
        nameKey: "function",
        shapes: [
          {
            label: "Row",
            start: { point: "", function: "", quantity: "volts", conditions: {}, conditionTitle: "" },
            fields: [
              text("point", "Point", { code: true, suggest: "points" }),
              text("against", "Against", {
                code: true,
                optional: true,
                suggest: "points",
                hint: "Empty: battery negative.",
              }),
              text("function", "Function"),
              choice("quantity", "Quantity", { volts: "volts", ohms: "ohms" }),
              text("conditionTitle", "Condition in words"),
              other("conditionValues", "conditions", "The car stands"),
              other("names", "unplugged", "Unplugged", { optional: true }),
            ],
          },
        ],
      }),
    ],
    empty: "A system is what one sheet shows: a name and the components on it.",
    start: { title: "", components: [], howItWorks: [], normalSurprises: [], cautions: [], chart: [] },
    letter: "",
  },
  symptoms: {
    title: "Symptoms",
    item: "symptom",
    nameKey: "id",
    columns: [text("id", "Name", { code: true }), title, other("expression", "value", "Follows")],
    fields: [
      list("bands", "What the driver notices", {
        item: "band",
        nameKey: "text",
        shapes: [
          {
            label: "Band",
            start: { text: "", normal: true },
            fields: [
              number("below", "Below", "", { optional: true, hint: "Empty: everything above the others." }),
              longText("text", "What is noticed"),
              other("flag", "normal", "As it should be"),
            ],
          },
        ],
      }),
    ],
    empty: "What a driver can notice: a lamp's brightness from loadAmps(E1).",
    start: { title: "", value: 0, bands: [{ text: "as usual", normal: true }] },
    letter: "",
  },
};

/** Columns of the fuse table: components of one kind in one glance. */
export const fuseColumns: readonly FieldSpec[] = [
  id,
  title,
  number("ratingAmps", "Rating, A"),
  choice("form", "Form", { F: "F", C: "C", E: "E", bolted: "bolted" }),
  number("coldOhms", "Cold, Ω"),
  place,
];
