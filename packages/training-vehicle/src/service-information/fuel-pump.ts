import type { VehicleDocument } from "@probeworthy/vehicle";
import { ohmRow, type Situation, voltRows } from "./chart-rows";

const keyOff: Situation = { title: "key off", conditions: { key: "off" } };
const keyOn: Situation = { title: "key on, engine off", conditions: { key: "on" } };
const cranking: Situation = { title: "cranking", conditions: { key: "start" } };
const idle: Situation = { title: "idle", conditions: { key: "on", engineSpeed: 850 } };
const load: Situation = {
  title: "3000 1/min, pedal at 60 %",
  conditions: { key: "on", engineSpeed: 3000, accelerator: 60, roadSpeed: 80 },
};

export const fuelPump: VehicleDocument["systems"][number] = {
  id: "fuel-pump",
  title: "Fuel pump",
  components: ["A2", "M13", "K11", "K12", "R6", "B14", "F27", "F26", "F12"],
  howItWorks: [
    {
      title: "Who lets the pump run",
      paragraphs: [
        "The pump M13 sits in the tank under the rear seat. Its current comes from F27 through the contact of K11, and goes home at XE11 on the floor beside it. The engine module pulls terminal 85 of K11 low, but only while the starter is asked for or the crankshaft sensor B14 gives pulses. Key on with a standing engine: no pump. A car on its roof with a stalled engine pumps no fuel.",
        "So a pump that does not run has three families of causes. The pump's own circuit: F27, contact, conductor, motor, ground. The coil's circuit: F26, coil, the control conductor, A2. Or A2 is right not to ask, because nothing tells it that the engine turns.",
      ],
    },
    {
      title: "Two levels",
      paragraphs: [
        "At idle the engine needs a fraction of what the pump can deliver. Behind K11 the way divides: through the resistor R6, or past it through the contact of K12. At idle K12 rests, R6 takes its share, and the pump gets 7 to 9 V. With the pedal down, while cranking, and whenever A2 runs on its emergency plan, K12 pulls in and the pump gets nearly everything.",
        "The pump is a motor: it takes the current it needs for the speed it has. At low voltage it turns slower, pushes less and draws less, so that R6 drops less than its ohms and the full current would suggest.",
      ],
    },
    {
      title: "Judging it",
      paragraphs: [
        "Measure across the pump, both leads at X208, in both levels. Then divide: what is missing between the battery and the feed, and what stands on the ground. Half a volt on the ground side costs the pump as much as half a volt on the feed side, and nobody looks there.",
        "A pump that draws much more than 5 A at full level works against something: a blocked filter, a stiff bearing. One that draws much less although its voltage is right has worn brushes. A pump that draws nothing with voltage across it is open.",
      ],
    },
  ],
  normalSurprises: [
    "7 to 9 V across the pump at idle is right on this car. It is no voltage drop to hunt for.",
    "Key on, engine standing: the pump is silent and its feed reads 0 V.",
    "Terminal 85 of K11 reads battery voltage while the relay is at rest: the coil holds it up.",
    "While cranking the pump gets less than 11 V because the battery gives no more.",
  ],
  cautions: [
    "Fuel. No sparks, no lamp without a guard, extinguisher at hand, work ventilated.",
    "Do not bridge K11 and walk away: the pump then runs with the engine stopped, whatever has happened.",
    "Relieve the pressure before you open a fuel line. A meter needs no open line.",
    "Move the rear seat base away from the connector before you probe it, and keep the probes from touching each other.",
  ],
  chart: [
    ...voltRows("F27:2", "Pump supply behind the fuse", [keyOff, idle, load]),
    ...voltRows("K11:86", "Pump relay, terminal 86", [keyOff, keyOn]),
    ...voltRows("K11:85", "Pump relay, terminal 85", [keyOn, cranking, idle]),
    ...voltRows("K11:87", "Pump relay, terminal 87", [keyOn, cranking, idle, load]),
    ...voltRows("K12:85", "Full level relay, terminal 85", [keyOn, cranking, idle, load]),
    ...voltRows("R6:1", "Across the series resistor", [cranking, idle, load], "R6:2"),
    ...voltRows("X208.1:h", "Across the pump", [keyOn, cranking, idle, load], "X208.2:h"),
    ...voltRows("X208.2:h", "Pump ground", [idle, load]),
    ohmRow("X208.1:c", "Pump motor", ["X208"], "X208.2:c"),
    ohmRow("X208.2:h", "Pump ground to battery negative", ["X208"]),
    ohmRow("K11:86", "Coil of the pump relay", ["X200", "X201"], "K11:85"),
  ],
};
