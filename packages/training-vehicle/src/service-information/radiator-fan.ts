import type { VehicleDocument } from "@probeworthy/vehicle";
import { ohmRow, type Situation, voltRows } from "./chart-rows";

const at = (title: string, conditions: Situation["conditions"]): Situation => ({
  title,
  conditions: { key: "on", engineSpeed: 850, ...conditions },
});
const keyOff: Situation = { title: "key off", conditions: { key: "off" } };
const warm = at("idle, 88 °C", { coolantTemperature: 88 });
const hot = at("idle, 100 °C", { coolantTemperature: 100 });
const boiling = at("idle, 110 °C", { coolantTemperature: 110 });

export const radiatorFan: VehicleDocument["systems"][number] = {
  id: "radiator-fan",
  title: "Radiator fans",
  components: ["A2", "A6", "M10", "M11", "K10", "R5", "B12", "F21", "F24", "F26", "F12"],
  howItWorks: [
    {
      title: "Two fans, two ways to run them",
      paragraphs: [
        "Behind the radiator sit two fans. The main fan M10 hangs on a module of its own, A6, which gives it as much voltage as the engine needs. The auxiliary fan M11 is plain: fuse F24, relay K10, a series resistor R5, the motor, ground. It only knows on and off.",
        "Both are asked for by the engine module A2, which looks at the coolant temperature from B12. Up to 94 °C neither turns. From 96 °C the main fan begins, and gets faster with every degree. From 97 °C the auxiliary fan helps.",
      ],
    },
    {
      title: "The request lead",
      paragraphs: [
        "A2 tells A6 the wanted speed by pulses on the request lead: the longer the pulses, the faster the fan. A voltmeter shows their mean. Around a tenth of the supply means stand still, nine tenths mean full speed.",
        "A lead that always rests at one end says nothing, so A6 takes both ends for a fault and runs the fan flat out. That is on purpose: a noisy car comes to the workshop, a boiled one comes on a truck. So a fan that roars from key-on until key-off is most often a request that does not arrive.",
      ],
    },
    {
      title: "From pulses to speed",
      paragraphs: [
        "A6 switches the battery feed from F21 on and off many thousand times a second. The winding smooths the current, and the motor feels the mean: half the pulses, half the voltage. The feed carries less current than the motor while the pulses are short, because the motor's current keeps circling through A6 between them.",
        "The resistor R5 does the same for the auxiliary fan the old way: what it takes, it turns into heat. Its drop depends on the current, so it has to be judged with the fan running. A motor that is stuck draws far more through R5 than one that turns; then R5 gets hot and F24 is the last guard.",
      ],
    },
    {
      title: "Where to begin",
      paragraphs: [
        "Fan dead, engine hot: is it one fan or both? Both together share A2, B12, F26 and the ground XE10. One alone has its own fuse, feed and motor. Then measure at the motor's connector, plugged in and asked to run. Full voltage across a motor that stands is the motor. No voltage across it sends you to feed or ground, and the meter's black lead on battery negative tells which.",
      ],
    },
  ],
  normalSurprises: [
    "With the coolant sensor unplugged both fans run as soon as the key is on. It is the emergency plan, not a second fault.",
    "With the request lead unplugged from A6 the main fan runs at full speed.",
    "The mean of the request lead is about 1.4 V on a cool engine, not 0 V.",
    "The auxiliary fan never gets battery voltage: R5 keeps more than 2 V.",
    "Fans stand still with the key off on this car, however hot it is.",
  ],
  cautions: [
    "A fan can start at any moment with the key on. Hands, hair and leads stay out of the shroud.",
    "R5 and A6 are hot enough to burn you after a long run.",
    "The cooling system is under pressure. Do not open the cap of a hot engine to look at a fan fault.",
    "A stuck motor draws its full stall current: do not hold the key on to watch it.",
  ],
  chart: [
    ...voltRows("X211.1:h", "Fan module, battery feed", [keyOff, warm, boiling]),
    ...voltRows("X211.2:h", "Fan module, ground", [hot, boiling]),
    ...voltRows("X211.3:h", "Fan module, ignition feed", [keyOff, warm]),
    ...voltRows("X211.4:h", "Fan request, mean", [warm, hot, boiling], "X211.5:h"),
    ...voltRows("X212.1:h", "Across the main fan motor", [warm, hot, boiling], "X212.2:h"),
    ...voltRows("K10:86", "Auxiliary fan relay, terminal 86", [keyOff, warm]),
    ...voltRows("K10:85", "Auxiliary fan relay, terminal 85", [warm, hot]),
    ...voltRows("K10:30", "Auxiliary fan relay, terminal 30", [keyOff, hot]),
    ...voltRows("K10:87", "Auxiliary fan relay, terminal 87", [warm, hot]),
    ...voltRows("R5:1", "Across the series resistor", [warm, hot], "R5:2"),
    ...voltRows("X213.1:h", "Across the auxiliary fan motor", [warm, hot], "X213.2:h"),
    ...voltRows("X213.2:h", "Auxiliary fan, ground", [hot]),
    ohmRow("X212.1:c", "Main fan motor", ["X212"], "X212.2:c"),
    ohmRow("X213.1:c", "Auxiliary fan motor", ["X213"], "X213.2:c"),
    ohmRow("K10:86", "Coil of the auxiliary fan relay", ["X200", "X201"], "K10:85"),
  ],
};
