import type { ComponentOf, VehicleDocument } from "@probeworthy/vehicle";

const lightSwitch: ComponentOf<"switch"> = {
  kind: "switch",
  id: "S3",
  title: "Light switch",
  place: "dash, left of the column",
  zone: "dashLeft",
  terminals: ["30", "58", "56"],
  condition: "lightSwitch",
  positions: {
    off: [],
    side: [["30", "58"]],
    dipped: [
      ["30", "58"],
      ["30", "56"],
    ],
  },
  contactOhms: 0.005,
};

const dipSwitch: ComponentOf<"switch"> = {
  kind: "switch",
  id: "S4",
  title: "Dip switch",
  place: "on the steering column",
  zone: "column",
  terminals: ["56", "56a", "56b"],
  condition: "mainBeam",
  positions: { off: [["56", "56b"]], on: [["56", "56a"]] },
  contactOhms: 0.005,
};

const brakeLampSwitch: ComponentOf<"switch"> = {
  kind: "switch",
  id: "S5",
  title: "Brake lamp switch",
  place: "on the pedal bracket",
  zone: "bulkheadLeft",
  terminals: ["1", "2"],
  condition: "brakePedal",
  positions: { released: [], pressed: [["1", "2"]] },
  contactOhms: 0.008,
};

const reversingSwitch: ComponentOf<"switch"> = {
  kind: "switch",
  id: "S6",
  title: "Reversing lamp switch",
  place: "on the gearbox",
  zone: "engine",
  terminals: ["1", "2"],
  condition: "reverse",
  positions: { off: [], on: [["1", "2"]] },
  contactOhms: 0.008,
};

export const lightingSwitches: VehicleDocument["components"] = [
  lightSwitch,
  dipSwitch,
  brakeLampSwitch,
  reversingSwitch,
];
