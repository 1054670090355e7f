import type { VehicleDocument } from "@probeworthy/vehicle";
import { ohmRow, type Situation, voltRows } from "./chart-rows";

const state = (title: string, conditions: Situation["conditions"]): Situation => ({
  title,
  conditions: { key: "on", engineSpeed: 850, ...conditions },
});
const off = state("nothing switched", {});
const left = state("indicators left, lit", { indicator: "left" });
const right = state("indicators right, lit", { indicator: "right" });
const hazard = state("hazard warning, lit", { indicator: "hazard" });
const horn = state("horn button pressed", { horn: "pressed" });
const door = state("driver's door open", { doors: "open" });

export const indicatorsAndHorn: VehicleDocument["systems"][number] = {
  id: "indicators-and-horn",
  title: "Body module, indicators and horn",
  components: [
    ...["A5", "S7", "S8", "S9", "S10", "S11", "K3", "F32", "F36", "F37", "F47"],
    ...["E7", "E8", "E9", "E10", "E13", "E14", "E19", "E30", "E31"],
  ],
  howItWorks: [
    {
      title: "One module for many small jobs",
      paragraphs: [
        "The body module A5 behind the fuse box has a memory feed (F36), a feed for the indicator lamps (F37), and terminal 15 (F47). It reads switches that do nothing but join a thin wire to ground: pulled up inside, high at rest, near zero when closed. So an open wire is a switch that is never on, and a wire rubbed through to the body is a switch that is always on.",
        "The data bus passes through the module on its way to the cluster: in at cavities 1 and 4 of X105, out at 2 and 5. Unplug X105 and the cluster is alone on its stub.",
      ],
    },
    {
      title: "Indicators",
      paragraphs: [
        "Two high sides inside the module switch the indicator feed to the left and right lamps: 21 W front, 21 W rear, 5 W repeater. The module flashes them; every value in the chart is that of the lit half. Hazard warning works with the key off and both sides.",
        "The module measures the current of each side. If a side draws less than 3 A although it is lit, one of its 21 W bulbs is missing: it flashes that side twice as fast and stores a code. A failed repeater is too small a part of the sum to be seen. Far too much current shuts the output down until the next key-on.",
      ],
    },
    {
      title: "Horn",
      paragraphs: [
        "The horn button in the wheel joins a wire to ground through the clock spring. The module then pulls terminal 85 of the relay K3 low, K3 clicks, and its contact feeds the horn from F32. Coil and contact hang on the same fuse: no click and no horn from a blown fuse, a click without a horn from the contact, the conductor, the horn or its ground.",
      ],
    },
    {
      title: "Falling asleep",
      paragraphs: [
        "Three minutes after the last thing that keeps it busy (ignition, hazard warning, horn, an open door, side lamps, brake lamps) the module falls asleep. A door contact that does not open keeps the whole car from its rest.",
      ],
    },
  ],
  normalSurprises: [
    "One side flashing twice as fast is a message, not a second fault: a bulb of that side is out.",
    "With a trailer coupled a missing bulb may not be noticed: the trailer's bulbs make up for it.",
    "Indicators need the ignition, hazard warning does not.",
    "The switch wires read battery voltage only while the module is awake.",
  ],
  cautions: [
    "The horn button is on the airbag. Depower the airbag by the maker's procedure before you take anything off the wheel.",
    "Key off, and let the modules fall asleep, before you unplug the body module.",
    "The horn is loud. Tell the people around you.",
  ],
  chart: [
    ...voltRows("X104.1:h", "Memory feed", [off, { title: "key off", conditions: { key: "off" } }]),
    ...voltRows("X104.9:h", "Indicator feed", [off, hazard]),
    ...voltRows("X104.2:h", "Ignition feed", [off, { title: "key off", conditions: { key: "off" } }]),
    ...voltRows("X104.8:h", "Ground", [off, hazard]),
    ...voltRows("X104.3:h", "Indicator switch left", [off, left]),
    ...voltRows("X104.4:h", "Indicator switch right", [off, right]),
    ...voltRows("X104.5:h", "Hazard warning switch", [off, hazard]),
    ...voltRows("X104.6:h", "Horn button", [off, horn]),
    ...voltRows("X104.7:h", "Horn relay coil, switched side", [off, horn]),
    ...voltRows("X104.10:h", "Door contact", [off, door]),
    ...voltRows("X104.13:h", "Indicators left, output", [off, left, hazard]),
    ...voltRows("X104.14:h", "Indicators right, output", [off, right, hazard]),
    ...voltRows("X119.1:h", "Indicator front left, feed", [off, left]),
    ...voltRows("X119.2:h", "Indicator front left, ground", [left]),
    ...voltRows("X120.1:h", "Indicator front right, feed", [off, right]),
    ...voltRows("X120.2:h", "Indicator front right, ground", [right]),
    ...voltRows("X130.4:h", "Indicator rear left, feed", [off, left]),
    ...voltRows("X131.4:h", "Indicator rear right, feed", [off, right]),
    ...voltRows("X150.1:h", "Trailer socket L", [off, left]),
    ...voltRows("X150.4:h", "Trailer socket R", [off, right]),
    ...voltRows("K3:30", "Horn relay, terminal 30", [off, horn]),
    ...voltRows("K3:87", "Horn relay, terminal 87", [off, horn]),
    ...voltRows("X109.1:h", "Horn, feed", [off, horn]),
    ...voltRows("X109.2:h", "Horn, ground", [horn]),
    ohmRow("K3:86", "Coil of the horn relay", ["X100"], "K3:85"),
    ohmRow("X109.1:c", "Horn", ["X109"], "X109.2:c"),
  ],
};
