import type { VehicleDocument } from "@probeworthy/vehicle";
import { ohmRow, type Situation, voltRows } from "./chart-rows";

const at = (title: string, conditions: Situation["conditions"]): Situation => ({
  title: `idle, ${title}`,
  conditions: { key: "on", engineSpeed: 850, ...conditions },
});
const keyOff: Situation = { title: "key off", conditions: { key: "off" } };
const rest = at("nothing pressed", { windowPosition: 50 });
const up = at("window up", { windowSwitch: "up", windowPosition: 50 });
const down = at("window down", { windowSwitch: "down", windowPosition: 50 });
const stop = at("window up at its end stop", { windowSwitch: "up", windowPosition: 0 });
const wiperOff = at("wipers off", { wiperStage: "off" });
const slow = at("wipers slow", { wiperStage: "slow" });
const fast = at("wipers fast", { wiperStage: "fast" });

export const wiperAndWindowSystem: VehicleDocument["systems"][number] = {
  id: "wiper-and-window",
  title: "Wiper and window",
  components: [
    "A5",
    "A7",
    "A9",
    "S20",
    "K14",
    "K15",
    "M15",
    "F38",
    "F40",
    "S21",
    "K16",
    "K17",
    "R8",
    "M16",
    "F39",
  ],
  howItWorks: [
    {
      title: "From the finger to the motor",
      paragraphs: [
        "The window switch S20 does not carry the motor's current. It pulls a lead of the switch panel A7 to ground. A7 puts the wish on the one-wire bus, the window drive A9 hears it and pulls in one of two relays. Three links in a chain, and each can be proven by itself: lead, bus, relay.",
      ],
    },
    {
      title: "Two relays, two directions",
      paragraphs: [
        "At rest both relays hold their side of the motor at ground through 87a: the motor is braked. Pulled in, K14 puts its side on the feed while K15 keeps the other at ground, and the window goes up. K15 alone turns it down. So one direction that is dead can be the feed contact of one relay, or the ground contact of the other.",
        "The current of a moving window is some 6 A. At the end stop the motor is held and draws two or three times as much for as long as the switch is held.",
      ],
    },
    {
      title: "The wiper",
      paragraphs: [
        "The stalk S21 works two relays. In SLOW relay K16 feeds the motor through the series resistor R8; in FAST relay K17 bridges the resistor. The motor stands between the feed and the ground at XE14, which it shares with the driver's door.",
      ],
    },
    {
      title: "One ground for two",
      paragraphs: [
        "Door and wiper motor end at the same ring XE14. A bad ring lifts both: the window crawls when the wipers run, and the wipers slow when the window moves. Two faults in two circuits at once are most often one fault in what they share.",
      ],
    },
  ],
  normalSurprises: [
    "With nothing pressed both leads of the window motor are at ground.",
    "The window needs the ignition, the hot feed in the door is live with the key off.",
    "Going up is slower than going down: the glass has weight.",
    "In the slow stage the wiper motor never gets battery voltage: R8 keeps some of it.",
  ],
  cautions: [
    "The window has no pinch protection on the bench: fingers out of the frame.",
    "Do not hold a window at its stop for more than a moment; the motor gets hot.",
    "Wiper arms move without warning and bend what lies under them.",
  ],
  chart: [
    ...voltRows("XS45", "Door, battery feed", [keyOff, up]),
    ...voltRows("XS46", "Door, ground", [rest, up]),
    ...voltRows("X231.4:h", "Window switch, up", [rest, up, down]),
    ...voltRows("X231.5:h", "Window switch, down", [rest, up, down]),
    ...voltRows("X231.3:h", "LIN at the switch panel", [rest, up]),
    ...voltRows("K14:85", "Window relay up, terminal 85", [rest, up]),
    ...voltRows("K15:85", "Window relay down, terminal 85", [rest, down]),
    ...voltRows("X234.1:h", "Window motor, cavity 1 against 2", [rest, up, down, stop], "X234.2:h"),
    ...voltRows("K16:86", "Wiper relay, terminal 86", [wiperOff, slow]),
    ...voltRows("K17:86", "Wiper relay fast, terminal 86", [slow, fast]),
    ...voltRows("R8:1", "Across the series resistor", [slow, fast], "R8:2"),
    ...voltRows("X251.1:h", "Across the wiper motor", [wiperOff, slow, fast], "X251.2:h"),
    ...voltRows("X251.2:h", "Wiper motor, ground", [fast]),
    ohmRow("X234.1:c", "Window motor", ["X234"], "X234.2:c"),
    ohmRow("X251.1:c", "Wiper motor", ["X251"], "X251.2:c"),
  ],
};
