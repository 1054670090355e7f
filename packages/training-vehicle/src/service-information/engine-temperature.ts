import type { VehicleDocument } from "@probeworthy/vehicle";
import type { Row, Situation } from "./chart-rows";
import { ohmRow, voltRows } from "./chart-rows";

const coolantAt = (celsius: number): Situation => ({
  title: `coolant ${celsius} °C`,
  conditions: { key: "on", coolantTemperature: celsius },
});
const intakeAt = (celsius: number): Situation => ({
  title: `intake air ${celsius} °C`,
  conditions: { key: "on", intakeTemperature: celsius },
});
const coolant = [-20, 20, 60, 90, 110].map(coolantAt);
const intake = [-20, 20, 40, 60].map(intakeAt);

const sensorOhms = (point: string, against: string, name: string, situation: Situation): Row => {
  const row = ohmRow(point, name, [point.slice(0, 4)], against);
  return {
    ...row,
    conditions: { ...situation.conditions, key: "off" },
    conditionTitle: `${row.conditionTitle}, ${situation.title}`,
  };
};

export const engineTemperature: VehicleDocument["systems"][number] = {
  id: "engine-temperature",
  title: "Coolant and intake air temperature",
  components: ["A2", "A4", "B12", "B13", "F12"],
  howItWorks: [
    {
      title: "One resistor, one divider",
      paragraphs: [
        "A temperature sensor here is a resistor that falls as it gets warm: 15 kΩ in hard frost, 2.5 kΩ at 20 °C, about 250 Ω on a hot engine. It has two conductors and neither supplies anything. Inside the engine module a fixed resistor of 2.2 kΩ lifts the signal lead towards 5 V, the sensor pulls it down, and what stands between them is the reading.",
        "So high volts mean cold and low volts mean hot. An open circuit is the coldest cold there is: the lead goes up to 5 V. A short to ground is the hottest heat: 0 V. Both are outside of what a whole sensor can do, and the module stores a code.",
      ],
    },
    {
      title: "Wrong, but believable",
      paragraphs: [
        "The dangerous fault is the one in between. A kilohm of corrosion in series with a hot sensor makes an engine at 90 °C look like one at 40 °C: no code, a rich mixture, fans that stay off, a gauge that never gets up. A bridge of damp across the connector does the reverse on a cold engine.",
        "That is why a reading is compared with a second truth: the other sensor after a cold night (they must agree), a thermometer on the housing, or a resistor of known size in place of the sensor. The voltage at the module with 2.5 kΩ instead of the sensor must be that of 20 °C in the chart. If it is, the wires and the module are innocent.",
      ],
    },
    {
      title: "What the module does without",
      paragraphs: [
        "When the coolant signal is out of range the module takes 80 °C for granted, lets both fans run, and puts a message in the cluster. The gauge then shows 80 °C as well, whatever the engine is. A missing intake temperature counts as 20 °C and nobody notices much.",
        "Both sensors and the throttle sensor share the ground SG through the splice XS43. A joint with resistance there lifts them all: sensors too cold, throttle tracks out of tune.",
      ],
    },
  ],
  normalSurprises: [
    "Unplug the coolant sensor and the gauge shows 80 °C, not cold. The module replaces what it does not believe.",
    "An unplugged signal lead reads close to 5 V although nothing supplies it: that is the pull-up.",
    "Between 80 and 110 °C the voltage moves by a few tenths only. The ohms at a known temperature say more.",
    "After a night outside both sensors and the weather must show the same.",
  ],
  cautions: [
    "Hot coolant under pressure. Do not unscrew a sensor from a hot engine.",
    "Key off before you measure ohms: the pull-up falsifies them and the meter can be confused.",
    "With the sensor unplugged and the key on the fans start.",
    "Do not pierce the thin conductors of sensors. Use the back of the connector.",
  ],
  chart: [
    ...voltRows("X205.1:h", "Coolant temperature signal", coolant),
    ...voltRows("X205.2:h", "Sensor ground at the coolant sensor", [coolantAt(20), coolantAt(90)]),
    ...voltRows("X200.11:h", "Coolant temperature signal at the module", [coolantAt(20), coolantAt(90)]),
    ...voltRows("X206.1:h", "Intake air temperature signal", intake),
    ...voltRows("X206.2:h", "Sensor ground at the intake air sensor", [intakeAt(20)]),
    ...voltRows("X200.12:h", "Intake air temperature signal at the module", [intakeAt(20)]),
    ...coolant.map((situation) => sensorOhms("X205.1:c", "X205.2:c", "Coolant sensor", situation)),
    ...intake.map((situation) => sensorOhms("X206.1:c", "X206.2:c", "Intake air sensor", situation)),
    ohmRow("X205.2:h", "Sensor ground to battery negative", ["X205"]),
  ],
};
