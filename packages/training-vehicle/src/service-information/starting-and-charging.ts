import type { VehicleDocument } from "@probeworthy/vehicle";
import { ohmRow, type Situation, voltRows } from "./chart-rows";

const keyOff: Situation = { title: "key off", conditions: { key: "off" } };
const keyOn: Situation = { title: "key on, engine off", conditions: { key: "on" } };
const cranking: Situation = { title: "cranking", conditions: { key: "start" } };
const idle: Situation = { title: "engine running, 850 1/min", conditions: { key: "on", engineSpeed: 850 } };
const loaded: Situation = {
  title: "2000 1/min, dipped beam on",
  conditions: { key: "on", engineSpeed: 2000, lightSwitch: "dipped" },
};

export const startingAndCharging: VehicleDocument["systems"][number] = {
  id: "starting-and-charging",
  title: "Starting and charging",
  components: ["G1", "G2", "M2", "K1", "K2", "S1", "F1", "F3", "F4", "F13", "F16", "F25", "F31", "E2"],
  howItWorks: [
    {
      title: "What the system does",
      paragraphs: [
        "The battery turns the engine until it runs by itself. From then on the alternator carries the whole car and gives back to the battery what the start has taken. A car that starts badly may have a fault in either half, so both are tested together.",
        "Everything heavy sits at two clamps: X1 on the positive and X2 on the negative post. The negative cable goes to the body at XE1, the engine has its own strap to the body at XE2. Every ampere of the starter passes both of them.",
      ],
    },
    {
      title: "Starting",
      paragraphs: [
        "In START the ignition switch gives terminal 50. One wire tells the engine module, the other works the small relay K1 in the engine bay. K1 sends a strong feed from fuse F31 to the solenoid K2 on the starter. The key carries only the coil of K1, a tenth of an ampere or so.",
        "K2 pushes the pinion into the ring gear and closes the heavy contact 30 to 45. The starter then takes 150 to 200 A from the battery through nothing but copper: clamp, cable, contact, motor, engine block, strap, body, cable, clamp. A hundredth of an ohm anywhere in that circle costs nearly two volts.",
        "A click with no turning has a feed that is there and a current that is not: look along the heavy circle while somebody holds the key. No click at all lies in the thin half: key, K1, F31, terminal 50.",
      ],
    },
    {
      title: "Charging",
      paragraphs: [
        "The alternator's regulator holds about 14.3 V. It does not look at its own terminal B+ but, through the thin wire S and fuse F25, at the positive bar beside the battery, so that the drop along the charging cable does not rob the battery.",
        "With the key on and the engine standing, the charge lamp E2 gets its feed from F13 and its ground through terminal D+ inside the alternator: the lamp is lit. Once the machine charges, D+ rises to the car's voltage and both ends of the lamp are at the same potential: it goes out. An unlit lamp with the key on is therefore as telling as a lit one with the engine running.",
        "Charging is judged with the engine running and loads on. Voltage at the battery well above 13.5 V proves that something charges; the voltage between B+ and battery positive, and between the alternator's case and battery negative, tells whether the way there is good.",
      ],
    },
    {
      title: "The battery asleep",
      paragraphs: [
        "With the key off and the doors closed the modules fall asleep after a few minutes. What is left is a few hundredths of an ampere. A car that is flat after two days either has something that stays awake, or an addition nobody told you about, or a battery that holds nothing.",
      ],
    },
  ],
  normalSurprises: [
    "The lamps dim and the dash may flicker while the starter turns. The battery voltage falls below 11 V then, and recovers at once.",
    "A cold engine turns slower and takes more current than a warm one.",
    "The charge lamp is lit with the key on and the engine off. That is its test.",
    "Right after unlocking or switching off the car takes some hundreds of milliamperes until the modules are asleep. Wait before you judge the rest current.",
    "With the doors closed and everything asleep, an ammeter put into the battery cable wakes the modules for a few minutes.",
  ],
  cautions: [
    "Disconnect the battery negative first and connect it last. Take rings and watches off.",
    "The cables to the starter and the alternator have no small fuse. A spanner from plus to body welds itself on.",
    "Never disconnect the battery while the engine runs: the voltage jumps and modules die.",
    "Gear in neutral, handbrake on, nobody in front of the car when you crank. Keep clear of belt and fan.",
    "Batteries give off explosive gas. No sparks, no flames, eye protection on.",
    "An ammeter's 10 A input is no place for a starter current. Use voltage drops or a clamp.",
  ],
  chart: [
    ...voltRows("G1:+", "Battery posts", [keyOff, keyOn, cranking, idle, loaded], "G1:-"),
    ...voltRows("G1:+", "Positive post against its clamp", [cranking, loaded], "X1.1:h"),
    ...voltRows("X2.1:h", "Negative clamp against its post", [cranking, loaded]),
    ...voltRows("X1.1:h", "Positive clamp to starter terminal 30", [cranking], "K2:30"),
    ...voltRows("K2:30", "Across the solenoid contact", [keyOn, cranking], "K2:45"),
    ...voltRows("K2:45", "Starter motor", [cranking], "M2:2"),
    ...voltRows("XS2", "Engine block against battery negative", [cranking, loaded]),
    ...voltRows("XE1:body", "Body against battery negative", [cranking, loaded]),
    ...voltRows("K1:86", "Starter relay, terminal 86", [keyOff, keyOn, cranking]),
    ...voltRows("K1:30", "Starter relay, terminal 30", [keyOff, cranking]),
    ...voltRows("K1:87", "Starter relay, terminal 87", [keyOn, cranking]),
    ...voltRows("X101.1:h", "Solenoid terminal 50", [keyOn, cranking]),
    ...voltRows("G2:B+", "Alternator B+ against its case", [keyOff, idle, loaded], "G2:31"),
    ...voltRows("G2:B+", "Alternator B+ against battery positive", [idle, loaded], "G1:+"),
    ...voltRows("X102.1:h", "Sense wire S", [keyOff, keyOn, idle, loaded]),
    ...voltRows("X102.2:h", "Charge lamp wire D+", [keyOn, idle]),
    ohmRow("K1:86", "Coil of the starter relay", ["X30"], "K1:85"),
    ohmRow("XS2", "Engine block to body", [], "XE1:body"),
  ],
};
