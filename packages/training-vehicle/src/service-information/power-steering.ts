import type { VehicleDocument } from "@probeworthy/vehicle";
import { cautions, normalSurprises } from "./advice";
import { powerSteeringChart } from "./chart";
import { howItWorks } from "./how-it-works";

export const powerSteeringSystem: VehicleDocument["systems"][number] = {
  id: "power-steering",
  title: "Electric power steering",
  components: [
    "A1",
    "B1",
    "M1",
    "F2",
    "F11",
    "F1",
    "F16",
    "F13",
    "G1",
    "G2",
    "S1",
    "A2",
    "A3",
    "A4",
    "E1",
    "X80",
  ],
  howItWorks,
  normalSurprises,
  cautions,
  chart: powerSteeringChart,
};
