import type { VehicleDocument } from "@probeworthy/vehicle";
import { ohmRow, type Row, type Situation, voltRows } from "./chart-rows";

const keyOn: Situation = { title: "key on", conditions: { key: "on" } };

/** The battery taken off, so that nothing talks: the only honest way to measure a bus in ohms. */
const busOhms = (point: string, function_: string, against: string | undefined, more: string[]): Row => ({
  ...ohmRow(point, function_, ["X2", ...more], against),
  conditionTitle: ["battery disconnected", ...more.map((plug) => `${plug} unplugged`)].join(", "),
});

export const dataNetworkSystem: VehicleDocument["systems"][number] = {
  id: "data-network",
  title: "Data network",
  components: ["A1", "A2", "A3", "A4", "A5", "A7", "A9", "A10", "R1", "X80"],
  howItWorks: [
    {
      title: "One pair for the whole car",
      paragraphs: [
        "The modules of this car talk over one high-speed CAN pair. It begins at the engine module, passes the brake module, goes through the bulkhead at X30, meets power steering, angle sensor and diagnostic socket at the dash splices XS11 and XS12, runs through the body module, and ends behind the cluster.",
        "At rest both wires stand at about 2.5 V. A module that sends lifts CAN high and lowers CAN low for an instant. A voltmeter is too slow for that and shows a mean: a little above 2.5 V on high, a little below on low. The two means lie about as far above 2.5 V as below. A pair that does not is telling you something.",
      ],
    },
    {
      title: "Two ends",
      paragraphs: [
        "Each end of the pair has 120 Ω between high and low. One is inside the engine module, the other is the small part R1 in the harness behind the cluster. Side by side they make 60 Ω. Measure it with the battery disconnected; while anything talks, an ohmmeter shows nonsense.",
        "120 Ω means that one end is missing or that the pair is cut somewhere between you and it. 40 Ω means that somebody has added a third. Close to 0 Ω: the two wires touch. Unplugging X20, X30 or X105 cuts the pair in pieces and tells on which side the end is lost.",
      ],
    },
    {
      title: "The bus that passes through a module",
      paragraphs: [
        "The pair enters the body module at X105 cavities 1 and 4 and leaves at 2 and 5. Inside, the two are joined by copper, with or without supply. Unplug X105 and the cluster is alone with R1: the rest of the car has only the engine module's end.",
      ],
    },
    {
      title: "The one-wire branch",
      paragraphs: [
        "The driver's door has a bus of its own: LIN, one wire. The body module is its master and pulls the wire up to nearly battery voltage; whoever sends pulls it down. A healthy wire shows a mean a volt or two below the battery. A wire held at 0 V is shorted to ground or held down by a dead slave; one that stands at full battery voltage has nobody who talks.",
      ],
    },
    {
      title: "Reading codes over all modules",
      paragraphs: [
        "One module that everybody misses and that gives no answer to the scan tool: look at its feed, its ground and its two bus wires. A module that everybody misses although it is fed and its wires are good: the module itself. Nobody answers at all: the pair, or a node that holds it down. Everybody behind one point is missing: that point.",
        "Codes that begin with U say who has missed whom. Write them down from all modules before you erase anything: the one name that stands in every list is where to begin.",
      ],
    },
  ],
  normalSurprises: [
    "The two means do not add up to exactly 5.0 V. A tenth or so is the meter and the traffic.",
    "With one end missing the car may still talk. Length and speed of this pair forgive it for a while.",
    "After key off the body module stays awake for a few minutes and the bus is alive.",
    "The ohms between high and low read 60 Ω at any socket of the pair, because the way there adds next to nothing.",
  ],
  cautions: [
    "Ohms on the bus only with the battery disconnected and after a minute's wait.",
    "No test lamp and no supply on a bus wire.",
    "Repair twisted wires twisted: do not open more than a few centimetres of the pair.",
  ],
  chart: [
    busOhms("X80:6", "Between high and low at the socket", "X80:14", []),
    busOhms("X80:6", "Between high and low, end behind the cluster alone", "X80:14", ["X20"]),
    busOhms("X80:6", "Between high and low, end in the engine module alone", "X80:14", ["X105"]),
    busOhms("X20.8:h", "Between high and low at the engine module's plug", "X20.9:h", ["X20"]),
    ...voltRows("X80:6", "CAN high at the socket", [keyOn]),
    ...voltRows("X80:14", "CAN low at the socket", [keyOn]),
    ...voltRows("X22.6:h", "CAN high at the cluster", [keyOn]),
    ...voltRows("X22.7:h", "CAN low at the cluster", [keyOn]),
    ...voltRows("X20.8:h", "CAN high at the engine module", [keyOn]),
    ...voltRows("X20.9:h", "CAN low at the engine module", [keyOn]),
    ...voltRows("X105.3:h", "LIN at the body module", [keyOn]),
    ...voltRows("X231.3:h", "LIN at the window switch panel", [keyOn]),
    ...voltRows("X80:16", "Socket, battery feed", [keyOn]),
    ...voltRows("X80:4", "Socket, ground", [keyOn]),
  ],
};
