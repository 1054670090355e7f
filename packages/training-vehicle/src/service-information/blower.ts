import type { VehicleDocument } from "@probeworthy/vehicle";
import { ohmRow, type Situation, voltRows } from "./chart-rows";

const stage = (title: string, blowerStage: string): Situation => ({
  title: `idle, ${title}`,
  conditions: { key: "on", engineSpeed: 850, blowerStage },
});
const keyOff: Situation = { title: "key off", conditions: { key: "off" } };
const off = stage("blower off", "off");
const one = stage("stage 1", "one");
const three = stage("stage 3", "three");
const four = stage("stage 4", "four");

export const blowerSystem: VehicleDocument["systems"][number] = {
  id: "blower",
  title: "Blower",
  components: ["M14", "A8", "B30", "K13", "F28", "F29"],
  howItWorks: [
    {
      title: "Fed from above, governed from below",
      paragraphs: [
        "With the ignition on, relay K13 sends the strong feed of fuse F29 to the blower motor M14 and to its controller A8. From then on the motor's plus lead always carries the car's voltage, in every stage and with the blower off.",
        "The controller sits in the motor's ground lead. The more it lets through, the faster the motor. What it does not give to the motor it keeps for itself and turns into heat; that is why it sits in the air stream.",
      ],
    },
    {
      title: "What to measure",
      paragraphs: [
        "Measure across the motor, from X241 cavity 1 to cavity 2: stage by stage 4.5, 7, 9.5 V and nearly everything. Measured against battery negative the minus lead falls as the stage rises: full voltage when off, almost 0 V in stage 4. A full voltage on both leads of a motor that stands is not a mystery but a controller that lets nothing through.",
        "In stage 4 the controller is fully on, and every tenth of a volt that is missing at the motor is lost in feed or ground. That is the moment for voltage drops: 20 A flow.",
      ],
    },
    {
      title: "The control",
      paragraphs: [
        "The control B30 on the dash is a potentiometer on 5 V from the controller. Its signal rises from 0.5 V to 4.5 V. The controller compares the signal with its own 5 V, and takes a signal near 0 V for off.",
      ],
    },
    {
      title: "Relay with a diode",
      paragraphs: [
        "K13 has a diode across its coil, with the cathode at 86. The right part pulls in quietly. A part from another car with the diode the other way round shorts the coil's feed, and F28 goes the moment the key is turned.",
      ],
    },
  ],
  normalSurprises: [
    "With the blower off and the ignition on there is full voltage on both leads of the motor.",
    "The controller is hot in the middle stages and cooler in stage 4.",
    "With the key off there is nothing at all at the motor.",
    "The battery feed at K13 cavity 30 is live with the key off.",
  ],
  cautions: [
    "20 A flow in stage 4: no ammeter input of 10 A in this circuit.",
    "The controller's heat sink burns fingers.",
    "A blower that is stuck makes its feed hot long before F29 opens.",
  ],
  chart: [
    ...voltRows("K13:86", "Blower relay, terminal 86", [keyOff, off]),
    ...voltRows("K13:85", "Blower relay, terminal 85", [off]),
    ...voltRows("K13:30", "Blower relay, terminal 30", [keyOff, four]),
    ...voltRows("K13:87", "Blower relay, terminal 87", [keyOff, off, four]),
    ...voltRows("X241.1:h", "Blower motor, plus", [off, one, four]),
    ...voltRows("X241.2:h", "Blower motor, minus", [off, one, three, four]),
    ...voltRows("X241.1:h", "Across the blower motor", [off, one, three, four], "X241.2:h"),
    ...voltRows("X240.3:h", "Controller, ground", [four]),
    ...voltRows("X240.4:h", "Blower control, 5 V", [off]),
    ...voltRows("X240.5:h", "Blower control, signal", [off, one, three, four]),
    ...voltRows("X240.6:h", "Blower control, ground", [off]),
    ohmRow("X241.1:c", "Blower motor", ["X241"], "X241.2:c"),
  ],
};
