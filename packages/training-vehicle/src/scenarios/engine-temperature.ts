import type { ScenarioDocument } from "@probeworthy/evaluation";
import { backedOut, candidate, carScenario, nothingWrong, open, resistance } from "./scenario";

const job = (told: Parameters<typeof carScenario>[1]): ScenarioDocument =>
  carScenario("engine-temperature", told);

/** Jobs about temperatures that are not believed, and about those that are believed and wrong. */
export const engineTemperatureScenarios: ScenarioDocument[] = [
  job({
    id: "message-and-fans",
    title: "A message and both fans",
    level: "starter",
    learningGoal:
      "Tell an open from a short at a two-wire sensor with one voltage, and find it with the next.",
    instructorNote:
      "The code says open or short to supply, the volts at the module are near 5. A good technician unplugs X205 and bridges it: if the reading falls to 0 V the conductors are good and the sensor is open. If not, the same at the module's end. Ohms of the sensor against the chart at its temperature are the proof.",
    complaints: [
      "Message in the dash and the fans run from the moment I switch on.",
      "The needle jumped to the middle and stays there, and it sounds like a hair dryer under the bonnet.",
    ],
    pool: [
      candidate("coolant-signal-open", "Signal conductor of the coolant sensor open", 2, open("W359")),
      candidate("coolant-ground-open", "Ground conductor of the coolant sensor open", 1, open("W357")),
      candidate("coolant-pin", "Pin of the coolant sensor pushed back", 1, backedOut("X205.1")),
      candidate("coolant-sensor-broken", "Coolant sensor open inside", 1, {
        kind: "internalOpen",
        component: "B12",
        terminal: "2",
      }),
    ],
    startConditions: { key: "on", engineSpeed: 850 },
    par: { shopMinutes: 9, readings: 5 },
  }),
  job({
    id: "never-gets-warm",
    title: "Never gets warm",
    level: "intermediate",
    learningGoal: "Doubt a reading that is possible: compare it with a second truth.",
    instructorNote:
      "The gauge shows cold on a warm engine, no code. The module believes what it reads. A good technician compares coolant and intake temperature with the hand and a thermometer, takes the volts at the sensor and at the module, and measures the sensor in ohms: right for its temperature means the loss is in connector or conductor, wrong means the sensor.",
    complaints: [
      "The temperature never gets up, although the heater is hot. And it drinks.",
      "The gauge stays low. They have fitted a thermostat and it did not help.",
    ],
    pool: [
      candidate("coolant-contact-corroded", "Corrosion in X205 cavity 1", 2, resistance("X205.1", 350, 1200)),
      candidate("coolant-sensor-drifted", "Coolant sensor reads too cold", 1, {
        kind: "sensorShift",
        component: "B12",
        by: { from: -45, to: -30, spread: "linear" },
      }),
      candidate("coolant-module-contact", "Corrosion in X200 cavity 11", 1, resistance("X200.11", 350, 1200)),
    ],
    startConditions: { key: "on", engineSpeed: 850, coolantTemperature: 90 },
    par: { shopMinutes: 13, readings: 7 },
  }),
  job({
    id: "shows-hot-and-is-not",
    title: "Shows hot and is not",
    level: "intermediate",
    learningGoal: "A path to ground makes an NTC circuit look hot; find the path by unplugging.",
    instructorNote:
      "The lead is pulled too low. A good technician unplugs the sensor: the volts must go to 5. If they stay low the path is in the harness, if they come up it is the sensor. A dead short gives a code and the substitute, a leak of some hundred ohms only a hot gauge and fans.",
    complaints: [
      "The gauge shows hot after two minutes, the hose is still cold.",
      "Both fans come on at once, and the needle is up while the engine is stone cold.",
    ],
    pool: [
      candidate("coolant-signal-leak", "Signal conductor rubbed against the body", 2, {
        kind: "shortToGround",
        at: "X205.1:h",
        ohms: { from: 130, to: 260, spread: "log" },
      }),
      candidate("coolant-sensor-hot", "Coolant sensor reads too hot", 1, {
        kind: "sensorShift",
        component: "B12",
        by: { from: 55, to: 75, spread: "linear" },
      }),
      candidate("coolant-sensor-shorted", "Coolant sensor shorted inside", 1, {
        kind: "internalShort",
        component: "B12",
        terminal: "1",
        other: "2",
        ohms: { from: 0.5, to: 20, spread: "log" },
      }),
    ],
    startConditions: { key: "on", engineSpeed: 850, coolantTemperature: 35 },
    par: { shopMinutes: 11, readings: 6 },
  }),
  job({
    id: "four-readings-a-little-wrong",
    title: "Four readings, all a little wrong",
    level: "advanced",
    learningGoal: "Look for what the wrong readings share before looking at each of them.",
    instructorNote:
      "Coolant, intake air and throttle are all out of tune: they share the ground SG. A good technician puts the black lead on battery negative and the red one on the ground cavities of the sensors: they must read a few millivolts, and they read tenths. Then XS43, X200 cavity 10. The comparison code of the throttle is a follower, the throttle body is innocent.",
    complaints: [
      "Throttle message, and the gauge shows too cold. Two workshops, two throttle bodies.",
      "Since the engine harness was repaired it has idle trouble and the temperature looks wrong.",
    ],
    pool: [
      candidate("sensor-ground-contact", "Corrosion in X200 cavity 10", 2, resistance("X200.10", 350, 900)),
      candidate(
        "sensor-ground-wire",
        "Conductor of the sensor ground half broken",
        1,
        resistance("W355", 350, 900),
      ),
    ],
    startConditions: { key: "on", engineSpeed: 850, coolantTemperature: 80 },
    par: { shopMinutes: 17, readings: 9 },
  }),
  job({
    id: "eighty-degrees-unplugged",
    title: "Eighty degrees, unplugged",
    level: "starter",
    learningGoal: "Know what a substituted value is, and prove the circuit good with the chart.",
    instructorNote:
      "Nothing is wrong. The owner pulled the plug, saw 80 °C and both fans, and put it back. A good technician reads temperature, volts and ohms at two temperatures, compares them with the chart and explains the substitute.",
    complaints: [
      "I unplugged the temperature sensor to test the gauge and it went to 80 instead of zero. Is the module broken?",
      "With the sensor off the fans run and the gauge shows 80. Please check whether it really measures.",
    ],
    pool: [nothingWrong("substitute-normal", "A substituted value is the design")],
    startConditions: { key: "on", engineSpeed: 0, coolantTemperature: 20 },
    par: { shopMinutes: 7, readings: 4 },
  }),
];
