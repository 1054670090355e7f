import { cavities, type HarnessPart, wire } from "../harness";

const dashFuses = { place: "fuse box, left end of the dash", zone: "dashLeft" } as const;
const bulkhead = { place: "under the windscreen, left", zone: "bulkheadLeft" } as const;

/** Wiper: the stalk works a relay; slow through a series resistor, fast with a second relay across it. */
export const wiper: HarnessPart = {
  components: [
    {
      kind: "switch",
      id: "S21",
      title: "Wiper switch",
      place: "on the steering column",
      zone: "column",
      terminals: ["15", "53", "53b"],
      condition: "wiperStage",
      positions: {
        off: [],
        slow: [["15", "53"]],
        fast: [
          ["15", "53"],
          ["15", "53b"],
        ],
      },
      contactOhms: 0.02,
    },
    ...(["K16", "K17"] as const).map((id) => ({
      kind: "relay" as const,
      id,
      title: id === "K16" ? "Wiper relay" : "Wiper relay, fast",
      ...dashFuses,
      contact: "make" as const,
      coilOhms: 85,
      pullInVolts: 7,
      dropOutVolts: 2.5,
      contactOhms: 0.005,
      suppressor: "resistor" as const,
    })),
    { kind: "resistor", id: "R8", title: "Series resistor of the wiper", ...bulkhead, ohms: 0.9 },
    {
      kind: "motor",
      id: "M16",
      title: "Wiper motor",
      ...bulkhead,
      windingOhmsAt20: 0.45,
      torquePerAmp: 0.04,
      turning: { frictionTorque: 0.05, loadTorque: 0.12, loadPerSpeed: 0.0002 },
    },
    { kind: "fuse", id: "F39", title: "Wiper", ...dashFuses, ratingAmps: 15, form: "F", coldOhms: 0.0048 },
  ],
  connectors: [
    {
      id: "X250",
      title: "Wiper switch",
      place: "on the steering column",
      zone: "column",
      housing: "black, three-way",
      rows: 1,
      columns: 3,
      component: "S21",
      cavities: cavities(["15", "53", "53b"]),
    },
    {
      id: "X251",
      title: "Wiper motor",
      ...bulkhead,
      housing: "grey, two-way",
      rows: 1,
      columns: 2,
      component: "M16",
      cavities: cavities(["1", "2"]),
    },
  ],
  splices: [
    { id: "XS47", title: "Wiper feed splice", ...dashFuses },
    { id: "XS48", title: "Wiper relay output", ...dashFuses },
    { id: "XS49", title: "Wiper motor feed", ...bulkhead },
  ],
  conductors: [
    wire("W460", "XS6", "F39:1", "VT", 2.5, 0.03),
    wire("W461", "F39:2", "XS47", "GYRD", 1.5, 0.1),
    wire("W462", "XS47", "X250.1", "GYRD", 1, 0.8),
    wire("W463", "XS47", "K16:30", "GYRD", 1.5, 0.1),
    wire("W464", "X250.2", "K16:86", "GNBU", 0.75, 0.8),
    wire("W465", "X250.3", "K17:86", "GNPK", 0.75, 0.8),
    wire("W466", "K16:85", "XS3", "BKWH", 0.5, 0.4),
    wire("W467", "K17:85", "XS3", "BKWH", 0.5, 0.4),
    wire("W468", "K16:87", "XS48", "GNVT", 1.5, 0.1),
    wire("W469", "XS48", "R8:1", "GNVT", 1.5, 0.9),
    wire("W470", "XS48", "K17:30", "GNVT", 1.5, 0.1),
    wire("W471", "K17:87", "XS49", "GNOG", 1.5, 0.9),
    wire("W472", "R8:2", "XS49", "GNOG", 1.5, 0.1),
    wire("W473", "XS49", "X251.1", "GNOG", 1.5, 0.2),
    wire("W474", "X251.2", "XE14", "BK", 1.5, 0.5),
  ],
};
