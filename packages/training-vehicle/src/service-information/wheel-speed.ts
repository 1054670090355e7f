import type { VehicleDocument } from "@probeworthy/vehicle";
import { ohmRow, type Situation, voltRows } from "./chart-rows";

const keyOff: Situation = { title: "key off", conditions: { key: "off" } };
const standing: Situation = { title: "key on, standing", conditions: { key: "on" } };
const braking: Situation = {
  title: "key on, standing, brake pressed",
  conditions: { key: "on", brakePedal: "pressed" },
};
const rolling: Situation = {
  title: "40 km/h",
  conditions: { key: "on", engineSpeed: 1500, roadSpeed: 40 },
};

export const wheelSpeedSystem: VehicleDocument["systems"][number] = {
  id: "wheel-speed",
  title: "Wheel speed",
  components: ["A3", "B20", "B21", "B22", "B23", "S5", "F14", "F34"],
  howItWorks: [
    {
      title: "Four wheels, two kinds of sensor",
      paragraphs: [
        "The brake module A3 counts the teeth that pass each wheel's sensor. It needs the four speeds to see a wheel that is about to lock, and it tells the whole car the road speed. Steering, engine and cluster take it from the bus; none of them has a sensor of its own.",
        "In front sit active sensors: small circuits that draw one of two currents, about 7 mA between teeth and 14 mA on a tooth. Behind sit plain coils at a toothed ring.",
      ],
    },
    {
      title: "Active sensors in front",
      paragraphs: [
        "A3 feeds each front sensor with about 9 V on one wire. The other wire leads the sensor's current through a small resistor inside the module to ground. Seven milliamperes make roughly 0.8 V there, fourteen roughly 1.6 V. That is what you see on the signal wire: either value while the car stands, the mean of both while it rolls.",
        "So an active sensor can be judged without moving the car. 0 V on the signal wire means no current: open, or no feed. More than 2.5 V means that the feed reaches the signal wire past the sensor. Ohms through the sensor say nothing, because there is electronics inside.",
      ],
    },
    {
      title: "Coils behind",
      paragraphs: [
        "A coil makes its own alternating voltage, and the faster the wheel the more of it. At walking pace it is a few tenths of a volt. Standing still there is nothing to see, and A3 cannot know whether a coil is there or not. Its codes for the rear wheels appear only once the car has rolled.",
        "A coil may be measured in ohms: with X220 unplugged about 1.2 kΩ between the two wires, through every joint on the way, and no path from either wire to ground.",
      ],
    },
    {
      title: "The road speed",
      paragraphs: [
        "For the road speed A3 leaves out the fastest and the slowest wheel. One sensor that says nothing costs the anti-lock function, but the speedometer and the steering go on as before. That is a useful hint: message in the cluster and a correct speedometer mean one wheel, not the module.",
      ],
    },
  ],
  normalSurprises: [
    "The signal of a front sensor may rest at 0.8 V or at 1.6 V with the car standing. Both are right; it depends on where the tooth has stopped.",
    "Rear sensors give 0 V and no code while the car stands, even when unplugged.",
    "A speedometer that works does not prove that all four sensors work.",
    "Both rear wires of one wheel stand at nearly the same small voltage: the coil floats.",
  ],
  cautions: [
    "Chock the wheels and use stands before you turn a wheel by hand.",
    "Never put battery voltage on a wheel sensor. An active one dies at once.",
    "Key off before you unplug the brake module.",
  ],
  chart: [
    ...voltRows("X21.1:h", "Brake module, ignition feed", [keyOff, standing]),
    ...voltRows("X21.8:h", "Brake module, ground", [standing]),
    ...voltRows("X220.1:h", "Front left, supply", [keyOff, standing]),
    ...voltRows("X220.2:h", "Front left, signal", [standing, rolling]),
    ...voltRows("X220.3:h", "Front right, supply", [standing]),
    ...voltRows("X220.4:h", "Front right, signal", [standing, rolling]),
    ...voltRows("X220.5:h", "Brake lamp switch", [standing, braking]),
    ohmRow("X220.6:h", "Rear left, coil and conductors", ["X220"], "X220.7:h"),
    ohmRow("X220.8:h", "Rear right, coil and conductors", ["X220"], "X220.9:h"),
    ohmRow("X223.1:c", "Rear left, coil alone", ["X223"], "X223.2:c"),
    ohmRow("X224.1:c", "Rear right, coil alone", ["X224"], "X224.2:c"),
  ],
};
