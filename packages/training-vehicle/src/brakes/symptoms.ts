import type { VehicleDocument } from "@probeworthy/vehicle";
import { absolute, and, atLeast, choose, chosen, condition, subtract } from "../expressions";

const keyOn = chosen("key", 2);
const roadSpeed = condition("roadSpeed");
const clusterOn = and(keyOn, { signal: "awake", of: "A4" });

/** What a driver notices of the wheel speeds. */
export const wheelSpeedSymptoms: VehicleDocument["symptoms"] = [
  {
    id: "brakeMessage",
    title: "Brake message in the cluster",
    value: choose(clusterOn, choose({ signal: "brakeMessage", of: "A4" }, 2, 1), 0),
    bands: [
      { below: 0.5, text: "the cluster is off", normal: true },
      { below: 1.5, text: "none", normal: true },
      { text: "“Anti-lock brakes: not available”", normal: false },
    ],
  },
  {
    id: "speedometer",
    title: "Speedometer",
    value: choose(
      and(clusterOn, atLeast(roadSpeed, 10)),
      absolute(subtract({ signal: "roadSpeed", of: "A4" }, roadSpeed)),
      -1,
    ),
    bands: [
      { below: -0.5, text: "the car stands or the cluster is off", normal: true },
      { below: 6, text: "shows how fast you are", normal: true },
      { text: "shows something else than you drive", normal: false },
    ],
  },
];
