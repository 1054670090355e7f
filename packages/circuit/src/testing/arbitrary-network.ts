import fc from "fast-check";
import type { CircuitElement, NodeName, Resistor } from "../network";
import { kinds, terminalFields } from "../sample-elements";
import { type Figures, figures } from "./arbitrary-figures";
import { between, decades } from "./arbitrary-numbers";

type Kind = CircuitElement["kind"];

/** A network from `ground` on, and the nodes of the harness in it, ground first. */
export interface Drawn {
  readonly elements: readonly CircuitElement[];
  readonly nodes: readonly NodeName[];
}

export const ground = "ground";
export const networkOf = (elements: readonly CircuitElement[]) => ({ ground, elements });

const resistor = (id: string, a: NodeName, b: NodeName, ohms: number): Resistor => ({
  kind: "resistor",
  id,
  a,
  b,
  ohms,
});

/**
 * The resistances of a harness: a tree from the node n1, 1 mΩ to 30 MΩ, with chords. Into it leads what carries 200 A
 * (a cable of 1 mΩ and a starter of 60 mΩ), out of it the 30 MΩ of a dirty plug.
 */
export const harnesses = fc
  .array(
    fc.record({
      parent: fc.nat(),
      ohms: decades(-3, 7.4),
      chord: fc.option(fc.record({ to: fc.nat(), ohms: decades(-3, 7.4) })),
    }),
    { minLength: 3, maxLength: 9 },
  )
  .map((rows): Drawn => {
    const nodes = [ground, "n1", "starter", ...rows.map((_, k) => `n${k + 2}`)];
    const elements = [
      resistor("cable", "n1", "starter", 1e-3),
      resistor("starter", "starter", ground, 0.06),
      resistor("dirt", `n${rows.length + 1}`, ground, 3e7),
    ];
    rows.forEach(({ parent, ohms, chord }, k) => {
      const node = `n${k + 2}`;
      elements.push(resistor(`tree${k}`, nodes[1 + (parent % (k + 2))], node, ohms));
      if (chord) elements.push(resistor(`chord${k}`, node, nodes[chord.to % (k + 3)], chord.ohms));
    });
    return { elements, nodes };
  });

export const supply = (volts: number, ohms = 0.01): CircuitElement => ({
  kind: "voltageSource",
  id: "supply",
  positive: "n1",
  negative: ground,
  volts,
  ohms,
});

/** One element to be hung into a harness, with numbers that say where. */
interface Extra {
  readonly kind: Kind;
  readonly fields: Figures<Kind>;
  readonly picks: readonly number[];
  readonly ohms: number;
}

const extraOf = (kind: Kind): fc.Arbitrary<Extra> =>
  fc.record({
    kind: fc.constant(kind),
    fields: figures[kind] as fc.Arbitrary<Figures<Kind>>,
    picks: fc.array(fc.nat(), { minLength: 6, maxLength: 6 }),
    ohms: decades(-1, 3),
  });

/** Every kind hangs between any nodes of the harness, unless something is said of it here. */
const hang: { readonly [K in Kind]?: (place: Place) => readonly CircuitElement[] } = {
  // An ideal connection, or a source without resistance, might close a loop of such: a resistance leads to it.
  inductor: ({ fed }) => fed("a"),
  voltageSource: ({ fed }) => fed("positive"),
  battery: ({ fed }) => fed("positive"),
  // Their contacts switch loads of their own at the supply, so that they cannot buzz.
  comparator: ({ make, load, pick }) => [
    load,
    make({ a: "n1", b: load.a, positive: pick(0), negative: pick(1) }),
  ],
  relay: ({ id, make, load, pick, flags }) => {
    const [normallyOpen, normallyClosed] = [`${id}out`, `${id}rest`];
    const ends = [{ normallyOpen }, { normallyClosed }, { normallyOpen, normallyClosed }][flags % 3];
    return [
      load,
      resistor(`${id}restLoad`, normallyClosed, ground, load.ohms),
      make({ coilPlus: pick(0), coilMinus: pick(1), common: "n1", ...ends }, [
        "normallyOpen",
        "normallyClosed",
      ]),
    ];
  },
  regulator: ({ make, load, pick, flags }) => {
    const reference = flags % 4 === 0 ? pick(1) : ground;
    return [{ ...load, b: reference }, make({ input: pick(0), output: load.a, reference })];
  },
  driver: ({ make, load, pick, flags }) => [
    load,
    make({ output: flags % 2 === 0 ? load.a : pick(0), supply: pick(1), ground: pick(2) }),
  ],
  // What its regulator senses hangs on its own plus.
  alternator: ({ id, make, load, flags }) => {
    const plus = flags % 2 === 0 ? "n1" : "starter";
    return [
      resistor(`${id}lampFeed`, plus, load.a, load.ohms + 10),
      resistor(`${id}senseFeed`, plus, `${id}sense`, 0.1 * load.ohms),
      make(
        { plus, minus: ground, sense: `${id}sense`, lamp: load.a },
        flags % 3 === 0 ? ["sense", "lamp"] : flags % 3 === 1 ? ["sense"] : [],
      ),
    ];
  },
  // Answers with less than half of what it hears, so that loops of them die away.
  controlledSource: ({ id, make, load, pick, fields, sensed }) => {
    const { type = "vcvs", gain = 0 } = fields as Figures<"controlledSource">;
    const scale = { vcvs: 1, vccs: 1 / load.ohms, ccvs: sensed.ohms, cccs: sensed.ohms / load.ohms }[type];
    const control = type.startsWith("vc")
      ? { controlPositive: pick(0), controlNegative: pick(1) }
      : { controlElement: sensed.id };
    return [
      load,
      resistor(`${id}coupling`, load.a, pick(2), 10 * load.ohms),
      make({ positive: load.a, negative: ground, gain: gain * scale, ...control }),
    ];
  },
};

interface Place {
  readonly id: string;
  readonly fields: Figures<Kind>;
  readonly flags: number;
  /** A node of the harness; 0 and 1 differ. */
  pick(i: number): NodeName;
  make(fields: object, without?: readonly string[]): CircuitElement;
  /** From a node of its own to the ground; in no network before it is listed. */
  readonly load: Resistor;
  /** One of the harness's resistances. */
  readonly sensed: Resistor;
  fed(field: string): readonly CircuitElement[];
}

function hangInto(
  drawn: Drawn,
  { kind, fields, picks, ohms }: Extra,
  index: number,
): readonly CircuitElement[] {
  const { nodes, elements } = drawn;
  const id = `${kind}${index}`;
  const pick = (i: number): NodeName => {
    const first = picks[0] % nodes.length;
    return nodes[
      i === 1 ? (first + 1 + (picks[1] % (nodes.length - 1))) % nodes.length : picks[i] % nodes.length
    ];
  };
  const make = (given: object, without: readonly string[] = []): CircuitElement => {
    const own = terminalFields(kind).filter((field) => !without.includes(field));
    const ends = Object.fromEntries(own.map((field, i) => [field, pick(i)]));
    return { ...ends, ...fields, ...given, kind, id } as CircuitElement;
  };
  const trees = elements.filter((e): e is Resistor => e.id.startsWith("tree"));
  const place: Place = {
    id,
    fields,
    flags: picks[4] % 12,
    pick,
    make,
    load: resistor(`${id}load`, `${id}out`, ground, ohms + 1),
    sensed: trees[picks[3] % trees.length],
    fed: (field) => [resistor(`${id}feed`, pick(0), `${id}fed`, ohms), make({ [field]: `${id}fed` })],
  };
  return hang[kind]?.(place) ?? [make({})];
}

export interface Draw {
  /** Kinds that may hang in the harness; default every one there is. */
  readonly kinds?: readonly Kind[];
  /** One that does in any case. */
  readonly always?: Kind;
  readonly most?: number;
}

/** A harness with a supply at n1 and elements strewn in. */
export const networks = ({ kinds: some = kinds, always, most = 5 }: Draw = {}): fc.Arbitrary<Drawn> =>
  fc
    .record({
      harness: harnesses,
      volts: between(6, 16),
      first: always === undefined ? fc.constant([]) : extraOf(always).map((extra) => [extra]),
      extras: fc.array(fc.oneof(...some.map(extraOf)), { maxLength: most }),
    })
    .map(({ harness, volts, first, extras }) => ({
      nodes: harness.nodes,
      elements: [
        ...harness.elements,
        supply(volts),
        ...[...first, ...extras].flatMap((extra, i) => hangInto(harness, extra, i)),
      ],
    }));
