/** A column, the header words that mean it (small letters and digits only), and what it is called in messages. */
export interface Column {
  readonly title: string;
  readonly words: readonly string[];
}

export const connectorColumns = {
  connector: {
    title: "connector",
    words: ["plug", "conn", "connectorid", "connectorno", "id", "designator"],
  },
  cavity: { title: "cavity", words: ["pin", "way", "pinno", "pinnumber", "position", "chamber", "cavityno"] },
  component: { title: "component", words: ["part", "device", "plugsinto", "connectedto", "unit"] },
  terminal: { title: "terminal", words: ["componentterminal", "deviceterminal", "componentpin"] },
  title: { title: "title", words: ["name", "description", "connectorname"] },
  place: { title: "place", words: ["location", "where"] },
  zone: { title: "zone", words: ["field"] },
  housing: {
    title: "housing",
    words: ["housingcolour", "housingcolor", "connectorcolour", "connectorcolor"],
  },
  rows: { title: "rows", words: [] },
  columns: { title: "columns", words: [] },
  contact: { title: "contact ohms", words: ["contactohms", "contactresistance"] },
} as const satisfies Record<string, Column>;

export const conductorColumns = {
  conductor: {
    title: "conductor",
    words: ["wire", "wireno", "wirenumber", "conductorno", "circuit", "id", "number", "no", "nr", "cable"],
  },
  from: {
    title: "from",
    words: ["start", "end1", "source", "fromconnector", "fromcomponent", "fromend", "begin"],
  },
  fromPin: { title: "from pin", words: ["frompin", "fromcavity", "fromterminal", "pin1", "startpin"] },
  to: { title: "to", words: ["end", "end2", "target", "toconnector", "tocomponent", "toend", "destination"] },
  toPin: { title: "to pin", words: ["topin", "tocavity", "toterminal", "pin2", "endpin"] },
  colour: { title: "colour", words: ["color", "colourcode", "colorcode", "wirecolour", "wirecolor", "col"] },
  size: {
    title: "cross-section",
    words: ["crosssection", "mm2", "sqmm", "area", "size", "section", "csa", "squaremillimetres", "qmm"],
  },
  gauge: { title: "gauge", words: ["awg", "wiregauge"] },
  length: { title: "length", words: ["metres", "meters", "len", "m", "mm", "wirelength"] },
  pair: { title: "twisted pair", words: ["twistedpair", "twisted", "pair", "twistedwith"] },
} as const satisfies Record<string, Column>;

/** Header words as they are compared: `Cross-section (mm²)` → `crosssection`, with its unit `mm2` apart. */
export function readHeaderCell(text: string): { readonly word: string; readonly unit: string } {
  const found = /^(.*?)[([]([^)\]]*)[)\]]\s*$/.exec(text);
  const plain = (part: string): string =>
    part
      .toLowerCase()
      .replace("²", "2")
      .replace(/[^a-z0-9]/g, "");
  const word = plain(found?.[1] ?? text);
  const unit = plain(found?.[2] ?? "");
  if (unit !== "") return { word, unit };
  // `length mm`, `length in m`, `size awg`: the unit stands behind without brackets.
  const tail = /^(length|len|size|crosssection|area|gauge)(?:in)?(mm2|mm|cm|m|ft|awg)$/.exec(word);
  return tail ? { word: tail[1] ?? word, unit: tail[2] ?? "" } : { word, unit: word === "mm" ? "mm" : "" };
}
