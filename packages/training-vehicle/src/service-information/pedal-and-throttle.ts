import type { VehicleDocument } from "@probeworthy/vehicle";
import { ohmRow, type Situation, voltRows } from "./chart-rows";

const pedal = (percent: number): Situation => ({
  title: percent === 0 ? "pedal released" : percent === 100 ? "pedal to the floor" : `pedal at ${percent} %`,
  conditions: { key: "on", accelerator: percent },
});
const rest = pedal(0);
const half = pedal(50);
const floor = pedal(100);
const travel = [rest, half, floor];

export const pedalAndThrottle: VehicleDocument["systems"][number] = {
  id: "pedal-and-throttle",
  title: "Accelerator pedal and throttle",
  components: ["A2", "B10", "B11", "M12", "F22", "F12"],
  howItWorks: [
    {
      title: "No cable",
      paragraphs: [
        "The pedal is only a sensor. It tells the engine module where the foot is, the module decides how far the throttle plate shall open, a motor moves the plate, and a second sensor reports where the plate really is. Everything that must not go wrong is there twice.",
      ],
    },
    {
      title: "Two tracks at the pedal",
      paragraphs: [
        "B10 holds two potentiometers that move together. Track 1 goes from three quarters of a volt at rest to about four volts at the floor. Track 2 gives exactly half of that. The two have separate 5 V supplies, separate grounds, separate signals: six conductors in all, through X201 and X202.",
        "Why half? If both tracks gave the same voltage and their conductors touched, the module would not notice. With one at half, touching conductors pull the pair out of proportion at once. The module compares track 1 with twice track 2 all the time, and takes 0.3 V of difference for a fault.",
        "Resistance hides in the ground of a track: it lifts the bottom of that track, so that it reads too high at rest and less so at the floor. Resistance in the supply lowers the top. A bad contact in the signal conductor changes almost nothing, because the module's input takes hardly any current, until it is an open: then the input is pulled to ground.",
      ],
    },
    {
      title: "Throttle sensor and motor",
      paragraphs: [
        "B11 also has two tracks, but mirrored: when the plate opens, one rises and the other falls, and together they make 5 V. Both share one supply and one ground, and the supply T5 is the same rail as that of pedal track 1 inside the module. A short at the throttle therefore disturbs the pedal. The ground SG also serves the temperature sensors: one bad joint, four wrong readings.",
        "The motor M12 pushes the plate against a spring. The module sends it as much current as the wished opening needs, and knows what arrives. Without current the spring holds the plate a little open.",
      ],
    },
    {
      title: "Limp-home",
      paragraphs: [
        "As soon as one signal leaves its range, or a pair disagrees, the module stops believing the pedal: raised idle, no throttle, message in the cluster. Comparison codes stay until the key has been off, so a fault of half a second lasts for the trip. Read the live voltages before you clear anything, and move the pedal slowly through its whole travel while you watch both.",
      ],
    },
  ],
  normalSurprises: [
    "Track 2 of the pedal has half the voltage of track 1. That is the design.",
    "One throttle track falls while the pedal goes down. That is the design too.",
    "The pedal does not reach 5 V at the floor, and does not read 0 V at rest.",
    "The throttle motor draws current with the key on and the engine off.",
    "Shared supply: unplugging the throttle sensor can cure the pedal.",
  ],
  cautions: [
    "Never put a finger into a throttle body with the key on: the motor is stronger than it looks.",
    "The sensor supplies are small. A test lamp on a 5 V rail switches it off, or worse.",
    "Never feed battery voltage into a signal conductor.",
    "Gear in neutral, handbrake on, before you work the pedal with the engine running.",
  ],
  chart: [
    ...voltRows("X202.1:h", "Pedal track 1, supply", [rest, floor], "X202.3:h"),
    ...voltRows("X202.3:h", "Pedal track 1, ground", [rest, floor]),
    ...voltRows("X202.2:h", "Pedal track 1, signal", travel),
    ...voltRows("X202.4:h", "Pedal track 2, supply", [rest, floor], "X202.6:h"),
    ...voltRows("X202.6:h", "Pedal track 2, ground", [rest, floor]),
    ...voltRows("X202.5:h", "Pedal track 2, signal", travel),
    ...voltRows("X200.2:h", "Pedal track 1, signal at the module", travel),
    ...voltRows("X200.5:h", "Pedal track 2, signal at the module", travel),
    ...voltRows("X203.1:h", "Throttle sensor, supply", [rest, floor], "X203.4:h"),
    ...voltRows("X203.4:h", "Throttle sensor, ground", [rest, floor]),
    ...voltRows("X203.2:h", "Throttle track 1, signal", travel),
    ...voltRows("X203.3:h", "Throttle track 2, signal", travel),
    ...voltRows("X204.1:h", "Across the throttle motor", travel, "X204.2:h"),
    ...voltRows("X200.23:h", "Throttle motor feed", [rest, floor]),
    ...voltRows("X200.24:h", "Power ground of the engine module", [rest, floor]),
    ohmRow("X202.1:c", "Pedal track 1, supply to ground", ["X202"], "X202.3:c"),
    ohmRow("X202.4:c", "Pedal track 2, supply to ground", ["X202"], "X202.6:c"),
    ohmRow("X203.1:c", "Throttle sensor, supply to ground", ["X203"], "X203.4:c"),
    ohmRow("X204.1:c", "Throttle motor", ["X204"], "X204.2:c"),
  ],
};
