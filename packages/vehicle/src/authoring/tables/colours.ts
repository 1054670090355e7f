import { colourCodes } from "../../document/names";
import { err, ok, type Result } from "../../result";

type Code = (typeof colourCodes)[number];

/**
 * What people write for a colour, by IEC 60757 code: English words and their usual short forms, single letters of Asian and
 * British diagrams, two letters of German ones. Letters that mean different colours in different countries are not here.
 */
const words: Readonly<Record<Code, readonly string[]>> = {
  BK: ["black", "blk", "blck", "b", "sw"],
  BN: ["brown", "brn", "br", "n"],
  RD: ["red", "r", "rt"],
  OG: ["orange", "orn", "org", "o", "or"],
  YE: ["yellow", "yel", "ylw", "y", "ge"],
  GN: ["green", "grn", "g"],
  BU: ["blue", "blu", "bl", "l", "u"],
  VT: ["violet", "vio", "vi", "v", "purple", "pur", "ppl", "prp"],
  GY: ["grey", "gray", "gry", "gra", "gr", "slate"],
  WH: ["white", "wht", "w", "ws"],
  PK: ["pink", "pnk", "rs"],
  GD: ["gold", "gld"],
  TQ: ["turquoise", "trq", "turq"],
  SR: ["silver", "slv", "sil"],
};

const codeOf = new Map<string, Code>(
  colourCodes.flatMap((code) =>
    [code.toLowerCase(), ...words[code]].map((word): [string, Code] => [word, code]),
  ),
);

/** Written the same, meant differently: what to ask back. */
const ambiguous: Readonly<Record<string, string>> = {
  p: "pink (PK) or purple (VT)",
  s: "slate grey (GY) or silver (SR)",
  k: "pink (PK) or black (BK)",
  lg: "light green; take GN",
  tan: "tan; take BN",
  nat: "natural, without colour; take WH",
};

/**
 * The IEC 60757 codes of a conductor's colour: `RD`, `YEBK`. Takes codes, words and short forms, one colour or base and
 * stripe, parted by `/`, `-`, `+`, a space or nothing: `BLK/WHT`, `R-W`, `red white`, `RW`. Errors: what to write instead.
 */
export function parseColour(text: string): Result<string, string> {
  const parts = text
    .toLowerCase()
    .replace(/\b(with|stripe|striped|and)\b/g, " ")
    .split(/[\s/+\-|.,]+/)
    .filter((part) => part !== "");
  if (parts.length === 0) return err("the colour is missing; write a code of IEC 60757, such as RD or YEBK");
  if (parts.length > 2)
    return err(`"${text}" names more than two colours; write base and stripe, such as RDWH`);
  const codes = parts.flatMap((part): (Code | undefined)[] => {
    const whole = codeOf.get(part);
    if (whole !== undefined || parts.length === 2) return [whole];
    const half = part.length / 2;
    return part.length === 2 || part.length === 4 || part.length === 6
      ? [codeOf.get(part.slice(0, half)), codeOf.get(part.slice(half))]
      : [undefined];
  });
  const found = codes.filter((code) => code !== undefined);
  if (found.length === codes.length) return ok(found.join(""));
  const doubt = parts.map((part) => ambiguous[part]).find((meaning) => meaning !== undefined);
  return err(
    doubt === undefined
      ? `"${text}" is no colour known here; write a code of IEC 60757, such as RD or YEBK`
      : `"${text}" may mean ${doubt}; write the code of IEC 60757`,
  );
}
