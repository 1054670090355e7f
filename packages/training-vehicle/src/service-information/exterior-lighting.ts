import type { VehicleDocument } from "@probeworthy/vehicle";
import { ohmRow, type Situation, voltRows } from "./chart-rows";

const state = (title: string, conditions: Situation["conditions"]): Situation => ({
  title,
  conditions: { key: "on", engineSpeed: 850, ...conditions },
});
const off = state("lights off", {});
const side = state("side lamps", { lightSwitch: "side" });
const dipped = state("dipped beam", { lightSwitch: "dipped" });
const main = state("main beam", { lightSwitch: "dipped", mainBeam: "on" });
const braking = state("brake pressed", { brakePedal: "pressed" });
const all = state("side lamps, brake and indicators", {
  lightSwitch: "side",
  brakePedal: "pressed",
  indicator: "hazard",
});
const reversing = state("reverse engaged", { reverse: "on" });
const towing = state("trailer coupled, side lamps and brake", {
  lightSwitch: "side",
  brakePedal: "pressed",
  trailer: "coupled",
});

export const exteriorLighting: VehicleDocument["systems"][number] = {
  id: "exterior-lighting",
  title: "Exterior lighting and trailer socket",
  components: [
    ...["S3", "S4", "S5", "S6", "S11", "A5"],
    ...["F33", "F34", "F35", "F41", "F42", "F43", "F44", "F45", "F46"],
    ...["E3", "E4", "E5", "E6", "E11", "E12", "E15", "E16", "E17", "E18"],
    ...["E32", "E33", "E34", "E35"],
  ],
  howItWorks: [
    {
      title: "From the switch to the lamps",
      paragraphs: [
        "The light switch S3 takes terminal 30 from fuse F33 and gives it on: to the side lamps (58) in its first place, and to the dip switch (56) as well in its second. The dip switch S4 sends 56 either to the dipped beam (56b) or to the main beam (56a). All the lamp current passes these two switches.",
        "Behind the switches every side of the car has a fuse of its own: F41 and F42 dipped, F43 and F44 main, F45 and F46 side and tail. So one blown fuse darkens one side, and both sides dark point before the fuses.",
        "Brake lamps do not need the key: F34, the switch S5 at the pedal, then a splice above the pedals. The reversing lamps get terminal 15 through F35 and a switch in the gearbox.",
      ],
    },
    {
      title: "Two filaments, one ground",
      paragraphs: [
        "Each headlamp bulb holds a dipped filament of 55 W and a main filament of 60 W that end at one common pin. Each tail bulb holds 5 W for the tail and 21 W for the brake, and its cap is ground for both.",
        "In the tail lamp unit tail, brake, indicator and reversing bulbs stand on one metal strip, and the strip has one cavity in X130 or X131 to the body. In the headlamp unit three lamps share one splice. If such a ground is lost, the current of the lamp that is switched on looks for another way home: backwards through the other filament and through lamps that are off. Then lamps glow that nobody switched on, and the one you want is dim.",
        "That is how to read strange lights: one lamp dead is a bulb or its feed. Several lamps on one corner wrong together, and worse the more you switch on, is the ground of that corner. Measure it with the lamps lit: from the strip to battery negative there should be less than a tenth of a volt.",
      ],
    },
    {
      title: "The trailer socket",
      paragraphs: [
        "The thirteen-way socket X150 hangs on the tail harness, without a module in between: L and R at the indicators, 54 at the brake lamps, 58L and 58R at the tail lamps of their side, 31 at the tail ground XE6. With a trailer coupled its bulbs lie in parallel to the car's. A trailer with a bad ground does to its lamps what a bad strip does to the car's.",
        "Unplug the trailer first. If the fault goes with it, the car is innocent.",
      ],
    },
    {
      title: "The LED unit",
      paragraphs: [
        "The high brake lamp is a string of light-emitting diodes with a series resistor. It draws a fifth of an ampere, stays dark below about eight volts, and does not care about a small series resistance that would make a bulb visibly dim. It only works one way round.",
      ],
    },
  ],
  normalSurprises: [
    "Main beam puts out the dipped filament of the same bulb. Both together would overheat it.",
    "Side lamps and brake lamps work with the key off. Reversing lamps do not.",
    "With the engine running lamps get more than 13 V and are brighter than with the engine off.",
    "A cold bulb measures a tenth of the ohms that its watts suggest. It is not shorted.",
    "A trailer makes the car's own lamps a trace dimmer: the same conductors carry twice the current.",
  ],
  cautions: [
    "Halogen bulbs are hot and under pressure: let them cool, wear glasses, and do not touch the glass.",
    "Replace a bulb only by one of the same watts: a stronger one overheats holder and conductors.",
    "Before you probe behind a headlamp unit, think where the fan and the belt are.",
    "A fuse that blows twice is a short. Do not fit a bigger one.",
  ],
  chart: [
    ...voltRows("F33:2", "Light switch supply", [off, dipped]),
    ...voltRows("X110.2:h", "Light switch, terminal 58", [off, side, dipped]),
    ...voltRows("X110.3:h", "Light switch, terminal 56", [off, dipped, main]),
    ...voltRows("X111.3:h", "Dip switch, terminal 56b", [dipped, main]),
    ...voltRows("X111.2:h", "Dip switch, terminal 56a", [dipped, main]),
    ...voltRows("X115.1:h", "Headlamp left, dipped feed", [off, dipped, main]),
    ...voltRows("X115.3:h", "Headlamp left, main feed", [dipped, main]),
    ...voltRows("X115.2:h", "Headlamp left, ground", [dipped, main]),
    ...voltRows("X116.1:h", "Headlamp right, dipped feed", [off, dipped, main]),
    ...voltRows("X116.3:h", "Headlamp right, main feed", [dipped, main]),
    ...voltRows("X116.2:h", "Headlamp right, ground", [dipped, main]),
    ...voltRows("X117.1:h", "Side lamp front left", [off, side]),
    ...voltRows("X118.1:h", "Side lamp front right", [off, side]),
    ...voltRows("X130.2:h", "Tail lamp left, feed", [off, side, all]),
    ...voltRows("X130.3:h", "Brake lamp left, feed", [off, side, braking, all]),
    ...voltRows("X130.1:h", "Tail lamp unit left, ground", [side, braking, all]),
    ...voltRows("XS36", "Ground strip of the left bulb carrier", [side, braking, all]),
    ...voltRows("X131.2:h", "Tail lamp right, feed", [off, side, all]),
    ...voltRows("X131.3:h", "Brake lamp right, feed", [off, side, braking, all]),
    ...voltRows("X131.1:h", "Tail lamp unit right, ground", [side, braking, all]),
    ...voltRows("XS37", "Ground strip of the right bulb carrier", [side, braking, all]),
    ...voltRows("X133.1:h", "Number plate lamp", [off, side]),
    ...voltRows("X134.1:h", "High brake lamp", [off, braking]),
    ...voltRows("X114.2:h", "Reversing lamp switch, output", [off, reversing]),
    ...voltRows("X130.5:h", "Reversing lamp left, feed", [off, reversing]),
    ...voltRows("X131.5:h", "Reversing lamp right, feed", [off, reversing]),
    ...voltRows("X150.6:h", "Trailer socket 54", [off, braking, towing]),
    ...voltRows("X150.7:h", "Trailer socket 58L", [off, side, towing]),
    ...voltRows("X150.5:h", "Trailer socket 58R", [off, side, towing]),
    ...voltRows("X150.3:h", "Trailer socket 31", [braking, towing]),
    ohmRow("X115.1:c", "Headlamp left, dipped filament, cold", ["X115"], "X115.2:c"),
    ohmRow("X130.1:h", "Left tail ground to battery negative", ["X130"]),
    ohmRow("X131.1:h", "Right tail ground to battery negative", ["X131"]),
  ],
};
