import { prepareVehicle, startState, testPoints, type VehicleDocument } from "@probeworthy/vehicle";
import type { Command } from "../command";
import type { AttemptContext } from "../context";
import { conductorsOf } from "../grade/hypotheses";
import { secondsFor } from "../shop-time";
import type { Picture } from "./car-pictures";

/** Something that can be looked at in any situation, and the figures or words it gives. */
export interface PlannedTest {
  readonly text: string;
  readonly work: Work;
  readonly columns: readonly Column[];
}

type Work =
  | { readonly kind: "look" }
  | { readonly kind: "reading"; readonly red: string; readonly black: string }
  | { readonly kind: "readCodes" | "readLiveData"; readonly module: string }
  | { readonly kind: "fuse"; readonly fuse: string };

/** One figure (its spread grows as a meter's or a module's does) or one word of a test. */
export type Column =
  | { readonly kind: "figure"; readonly spread: "meter" | "module"; value(picture: Picture): number }
  | { readonly kind: "word"; value(picture: Picture): string };

/** Where the leads stand. */
export interface Leads {
  readonly red: string | null;
  readonly black: string | null;
}

export interface TestSet {
  readonly points: readonly string[];
  readonly modules: readonly string[];
  readonly tests: readonly PlannedTest[];
}

/**
 * All that a learner can look at with the scenario's instruments while everything is plugged in: what can be noticed,
 * each point of the system's conductors, fuses and grounds against battery negative, the volts across each conductor,
 * contact, fuse, ground and two-ended part, codes and live data of the system's modules, and the window of each fuse.
 */
export function testsOf({ scenario, document }: AttemptContext): TestSet {
  const members = new Set<string>(
    document.systems.find(({ id }) => id === scenario.system)?.components ?? [],
  );
  const battery = document.components.find(({ kind }) => kind === "battery");
  const points = reachable(document, members);
  const modules = document.components.flatMap(({ id, kind }) =>
    kind === "module" && members.has(id) ? [id] : [],
  );
  const tests: PlannedTest[] = [
    {
      text: "Look, feel and listen",
      work: { kind: "look" },
      columns: [{ kind: "word", value: ({ noticed }) => noticed }],
    },
  ];
  const place = new Map(points.map(({ id }, index) => [id, index]));
  const volts = (red: string, black: string): PlannedTest => {
    const [plus, minus] = [place.get(red) ?? 0, place.get(black) ?? 0];
    return {
      text: `Volts at ${red} against ${black}`,
      work: { kind: "reading", red, black },
      columns: [
        {
          kind: "figure",
          spread: "meter",
          value: (picture) => (picture.volts[plus] ?? 0) - (picture.volts[minus] ?? 0),
        },
      ],
    };
  };
  if (scenario.instruments.includes("volts")) {
    const minus = `${battery?.id}:-`;
    if (place.has(minus)) {
      for (const { id } of points) if (id !== minus) tests.push(volts(id, minus));
    }
    for (const [red, black] of pairsAcross(points, document)) tests.push(volts(red, black));
  }
  for (const id of modules) {
    if (scenario.instruments.includes("codes")) {
      tests.push({
        text: `Read the codes of ${id}`,
        work: { kind: "readCodes", module: id },
        columns: [{ kind: "word", value: ({ modules }) => modules.get(id)?.codes ?? "" }],
      });
    }
    if (scenario.instruments.includes("liveData")) tests.push(liveData(id, document));
  }
  for (const id of new Set(points.flatMap(({ owner, fuse }) => (fuse ? [owner] : [])))) {
    tests.push({
      text: `Pull ${id} and look at its element`,
      work: { kind: "fuse", fuse: id },
      columns: [{ kind: "word", value: ({ blownFuses }) => (blownFuses.includes(id) ? "melted" : "intact") }],
    });
  }
  return { points: points.map(({ id }) => id), modules, tests };
}

function liveData(id: string, document: VehicleDocument): PlannedTest {
  const module = document.components.find((part) => part.id === id);
  const names = module?.kind === "module" ? (module.scanValues ?? []).map(({ name }) => name) : [];
  return {
    text: `Read the live data of ${id}`,
    work: { kind: "readLiveData", module: id },
    columns: [
      { kind: "word", value: ({ modules }) => String((modules.get(id)?.values.size ?? 0) > 0) },
      ...names.map(
        (name): Column => ({
          kind: "figure",
          spread: "module",
          value: ({ modules }) => modules.get(id)?.values.get(name) ?? 0,
        }),
      ),
    ],
  };
}

interface Reachable {
  readonly id: string;
  readonly owner: string;
  readonly conductor: string | undefined;
  readonly fuse: boolean;
}

/** Points of the system's conductors, fuses and grounds that a lead reaches while everything is plugged in. */
function reachable(document: VehicleDocument, members: ReadonlySet<string>): Reachable[] {
  const healthy = prepareVehicle(document, []);
  if (!healthy.ok) throw new Error("the vehicle document cannot be simulated");
  const state = startState(healthy.value);
  if (!state.ok) throw new Error("the vehicle has no solution at rest");
  const near = new Set(conductorsOf(document, members).map(({ id }) => id));
  const ends = new Set(document.conductors.flatMap(({ id, from, to }) => (near.has(id) ? [from, to] : [])));
  const kinds = new Map(document.components.map(({ id, kind }) => [id, kind]));
  return testPoints(healthy.value, state.value).flatMap(({ id, owner, conductor, accessible }) => {
    const kind = kinds.get(owner);
    const wanted =
      id === "body" ||
      kind === "battery" ||
      (conductor !== undefined && near.has(conductor)) ||
      (kind === "fuse" && (members.has(owner) || ends.has(`${owner}:1`) || ends.has(`${owner}:2`))) ||
      (document.groundPoints.some((ground) => ground.id === owner) && ends.has(owner));
    return accessible && wanted ? [{ id, owner, conductor, fuse: kind === "fuse" }] : [];
  });
}

/** Both ends of each conductor, fuse, ground and in-line contact, and any two harness faces of a small part's plug. */
function pairsAcross(points: readonly Reachable[], document: VehicleDocument): [string, string][] {
  const pairs = new Map<string, [string, string]>();
  const add = (one: string | undefined, other: string | undefined) => {
    if (one === undefined || other === undefined || one === other) return;
    if (!pairs.has(`${other} ${one}`)) pairs.set(`${one} ${other}`, [one, other]);
  };
  const byConductor = groupBy(points, ({ conductor }) => conductor ?? "");
  byConductor.delete("");
  for (const [one, other] of byConductor.values()) add(one?.id, other?.id);
  const inline = new Set(
    document.connectors.flatMap(({ id, component }) => (component === undefined ? [id] : [])),
  );
  for (const [owner, own] of groupBy(points, ({ owner }) => owner)) {
    if (inline.has(owner)) {
      for (const { id } of own)
        if (id.endsWith(":h")) add(id, own.find((b) => b.id === `${id.slice(0, -1)}b`)?.id);
    } else if (own.length <= smallPlug) {
      for (const [index, one] of own.entries())
        for (const other of own.slice(index + 1)) add(one.id, other.id);
    }
  }
  return [...pairs.values()];
}

/** Up to this many points of one part are measured each against each. */
const smallPlug = 4;

function groupBy<Item>(items: readonly Item[], keyOf: (item: Item) => string): Map<string, Item[]> {
  const groups = new Map<string, Item[]>();
  for (const item of items) {
    const key = keyOf(item);
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [item]);
    else group.push(item);
  }
  return groups;
}

/** The commands of a test with the leads as they stand. */
export function commandsOf({ work }: PlannedTest, leads: Leads): Command[] {
  switch (work.kind) {
    case "look":
      return [];
    case "reading":
      return [
        ...(["red", "black"] as const).flatMap((lead): Command[] =>
          leads[lead] === work[lead] ? [] : [{ type: "placeLead", lead, point: work[lead] }],
        ),
        { type: "takeReading" },
      ];
    case "readCodes":
    case "readLiveData":
      return [{ type: work.kind, module: work.module }];
    case "fuse":
      return [
        { type: "pullFuse", fuse: work.fuse },
        { type: "fitFuse", fuse: work.fuse, fresh: false },
      ];
  }
}

/** Where the leads stand after a test. */
export const leadsAfter = ({ work }: PlannedTest, leads: Leads): Leads =>
  work.kind === "reading" ? { red: work.red, black: work.black } : leads;

/** Shop time of the commands, s. */
export const secondsOf = (commands: readonly Command[]): number =>
  commands.reduce((sum, command) => sum + secondsFor(command), 0);
