import { newComponent } from "../fields/new-record";

/** What every vehicle has: a battery, where its minus meets the body, and a key. The rest is the author's. */
export function blankVehicle(id: string, title: string): Record<string, unknown> {
  return {
    format: "probeworthy-vehicle-1",
    id,
    title,
    description: "",
    nominalVolts: 12,
    conditions: [
      {
        kind: "choice",
        name: "key",
        title: "Key",
        options: [
          { value: "off", title: "Off" },
          { value: "on", title: "On" },
        ],
        initial: "off",
      },
    ],
    components: [newComponent({}, "battery")],
    connectors: [],
    conductors: [],
    splices: [],
    groundPoints: [{ id: "XE1", title: "Battery ground" }],
    symptoms: [],
    systems: [],
  };
}
