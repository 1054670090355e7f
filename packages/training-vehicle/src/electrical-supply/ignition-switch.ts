import type { HarnessPart } from "../harness";
import { cavities, wire } from "../harness";

/** Ignition switch (terminals 30, 15, 75, 50), the accessory socket it feeds and the diagnostic socket. */
export const ignitionSwitch: HarnessPart = {
  components: [
    {
      kind: "switch",
      id: "S1",
      title: "Ignition switch",
      place: "right of the steering column",
      zone: "column",
      terminals: ["30", "15", "75", "50"],
      condition: "key",
      positions: {
        off: [],
        accessory: [["30", "75"]],
        on: [
          ["30", "75"],
          ["30", "15"],
        ],
        start: [
          ["30", "15"],
          ["30", "50"],
        ],
      },
      contactOhms: 0.004,
    },
    {
      kind: "passive",
      id: "X80",
      title: "Diagnostic socket",
      place: "under the dash, left of the column",
      zone: "dashLeft",
      terminals: ["4", "5", "6", "14", "16"],
      diagnosticSocket: { supply: "16", ground: "4", canHigh: "6", canLow: "14" },
    },
    {
      kind: "passive",
      id: "X81",
      title: "Accessory socket",
      place: "centre console",
      zone: "dashCentre",
      terminals: ["75", "31"],
    },
  ],
  connectors: [
    {
      id: "X24",
      title: "Ignition switch connector",
      place: "right of the steering column",
      zone: "column",
      housing: "natural, six-way",
      rows: 2,
      columns: 3,
      component: "S1",
      cavities: cavities(["30", "15", "", "50", "75", ""]),
    },
  ],
  conductors: [
    wire("W50", "F16:2", "X24.1", "RDWH", 2.5, 0.7),
    wire("W51", "X24.2", "XS6", "VT", 2.5, 0.7),
    wire("W52", "X24.5", "F17:1", "GYRD", 2.5, 0.7),
    wire("W53", "F17:2", "X81:75", "GYRD", 2.5, 1.2),
    wire("W54", "X81:31", "XS3", "BKWH", 2.5, 1.1),
    wire("W55", "F15:2", "X80:16", "RDYE", 1, 0.5),
    wire("W56", "X80:4", "XS3", "BKWH", 0.75, 0.5),
    wire("W57", "X80:5", "XS3", "BKWH", 0.75, 0.5),
  ],
};
