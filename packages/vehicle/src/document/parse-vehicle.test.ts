import { describe, expect, it } from "vitest";
import { benchVehicle } from "../testing/bench-vehicle";
import { must } from "../testing/drive";
import { validateVehicle } from "../validate/validate-vehicle";
import { parseVehicle, parseVehicleDraft } from "./parse-vehicle";
import type { VehicleDocument } from "./vehicle-document";

type Edit = (document: VehicleDocument) => void;
const edited = (edit: Edit): VehicleDocument => {
  const copy = structuredClone(benchVehicle);
  edit(copy);
  return copy;
};
const conductor = (document: VehicleDocument, id: string) => {
  const found = document.conductors.find((entry) => entry.id === id);
  if (!found) throw new Error(id);
  return found;
};
const component = <K extends string>(document: VehicleDocument, id: string, kind: K) => {
  const found = document.components.find((entry) => entry.id === id);
  if (found?.kind !== kind) throw new Error(id);
  return found as Extract<typeof found, { kind: K }>;
};

describe("parseVehicle", () => {
  it("accepts the bench vehicle and gives back what went in", () => {
    expect(must(parseVehicle(structuredClone(benchVehicle)))).toEqual(benchVehicle);
  });

  const wrong: [string, Edit, string, RegExp][] = [
    ["a doubled designator", (d) => (conductor(d, "W5").id = "W4"), "conductors[4].id", /conductors\[3\]/],
    ["a conductor to nowhere", (d) => (conductor(d, "W1").to = "XS9"), "conductors[0].to", /no splice/],
    [
      "a cavity that is not there",
      (d) => (conductor(d, "W11").to = "X2.9"),
      "conductors[10].to",
      /no cavity 9/,
    ],
    [
      "a second face where a component plugs in",
      (d) => (conductor(d, "W11").to = "X2.1/b"),
      "conductors[10].to",
      /second wired face/,
    ],
    [
      "a cavity in front of a terminal the component lacks",
      (d) => ((d.connectors[0]?.cavities[0] ?? { terminal: "" }).terminal = "99"),
      "connectors[0].cavities[0].terminal",
      /A1 has no terminal 99/,
    ],
    [
      "a law that sees the world",
      (d) =>
        component(d, "A1", "module").signals.unshift({
          name: "cheat",
          value: { condition: "steeringEffort" },
        }),
      "components[13].signals[0].value",
      /cannot see the condition/,
    ],
    [
      "a signal used before it is there",
      (d) => component(d, "A1", "module").signals.reverse(),
      "components[13].signals[0].value",
      /no signal stopped before/,
    ],
    [
      "a message nobody sends",
      (d) => component(d, "A2", "module").bus?.sends.pop(),
      "components[13].bus.receives[0]",
      /A2 does not send/,
    ],
    [
      "a switch position left out",
      (d) => delete component(d, "S1", "switch").positions.start,
      "components[6].positions",
      /position start is missing/,
    ],
    [
      "a chart row at a point that is not there",
      (d) => ((d.systems[0]?.chart[0] ?? { point: "" }).point = "X2.77:h"),
      "systems[0].chart[0].point",
      /no test point/,
    ],
    [
      "a condition out of range in a chart",
      (d) => ((d.systems[0]?.chart[1]?.conditions ?? {}).engineSpeed = 9000),
      "systems[0].chart[1].conditions",
      /from 0 to 6000/,
    ],
  ];
  it.each(wrong)("refuses %s and names the path", (_, edit, path, message) => {
    const result = parseVehicle(edited(edit));
    const messages = result.ok || result.error.code !== "invalid_document" ? [] : result.error.messages;
    const found = messages.find((entry) => entry.path === path);
    expect(found?.message, JSON.stringify(messages)).toMatch(message);
  });

  it("refuses what is not a vehicle at all, with the path", () => {
    const result = parseVehicle({ ...benchVehicle, conductors: [{ id: "w1" }] });
    expect(JSON.stringify(result)).toContain("conductors[0].id");
  });

  it("keeps a half-done draft that it would not simulate", () => {
    const draft = {
      format: "probeworthy-vehicle-1",
      id: "x",
      title: "Half done",
      conductors: [{ id: "W1" }],
    };
    expect(must(parseVehicleDraft(draft)).conductors).toEqual([{ id: "W1" }]);
    expect(parseVehicle(draft).ok).toBe(false);
    expect(parseVehicleDraft({ id: "x" }).ok).toBe(false);
  });
});

describe("validateVehicle", () => {
  it("finds only the unused reference output of the bench vehicle", () => {
    expect(validateVehicle(benchVehicle).map(({ message }) => message)).toEqual([
      "terminal NT5 of A2 is floating: no conductor reaches it",
    ]);
  });

  const drop =
    (id: string): Edit =>
    (document) => {
      document.conductors = document.conductors.filter((entry) => entry.id !== id);
    };
  const doubtful: [string, Edit, RegExp][] = [
    ["a floating terminal", drop("W14"), /terminal 1 of M1 is floating/],
    ["a feed without a fuse", (d) => (conductor(d, "W12").from = "XS1"), /W12 \(10 mm²\) is live .* no fuse/],
    [
      "a fuse larger than its conductor carries",
      (d) => (component(d, "F1", "fuse").ratingAmps = 40),
      /W11 \(1 mm²\) carries about 19 A, its fuse F1 holds 40 A/,
    ],
    ["a sensor without a return", drop("W17"), /sensor B1 has no return/],
    ["a temperature sensor without a return", drop("W35"), /sensor B2 has no return/],
    ["a module without a ground", drop("W13"), /no ground terminal of A1 reaches the body/],
    [
      "a bus with one terminator",
      (d) => delete component(d, "A2", "module").bus?.terminationOhms,
      /has 1 terminators/,
    ],
    ["a bus with one wire missing", drop("W21"), /shares CANH with A1 but not CANL/],
    ["a splice that joins nothing", (d) => d.splices.push({ id: "XS9" }), /splice XS9 joins fewer than two/],
    ["one side of an in-line cavity", drop("W22"), /only one side of cavity 1 of X7/],
  ];
  it.each(doubtful)("explains %s", (_, edit, message) => {
    const messages = validateVehicle(edited(edit)).map((entry) => entry.message);
    expect(messages.join("\n")).toMatch(message);
  });
});
