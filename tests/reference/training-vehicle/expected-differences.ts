/**
 * Where the terminal chart of each supplied fault differs from the healthy one, argued from the wiring diagram, with
 * the technician's reason. A group is a function of the chart and the
 * conditions in which its value is wrong.
 */
export interface ExpectedDifference {
  readonly rows: readonly RowGroup[];
  readonly because: string;
}
type RowGroup = readonly [function_: string, ...conditions: string[]];

const off = "key off";
const on = "key on, engine off";
const crank = "cranking";
const idle = "engine running, no effort";
const right = "engine running, 6 N·m to the right";
const left = "engine running, 6 N·m to the left";
const fast = "100 km/h, 6 N·m to the right";

/** Nothing, or much less, flows through the motor. */
const assistGone: RowGroup[] = [
  ["Motor M+ against M−", right, left, fast],
  // The few tenths of a volt that motor current drops on its way to ground.
  ["Motor M− to battery negative", right],
];
/** Assist at the level of the assumed 90 km/h: far from the value at standstill, a tenth above it at 100 km/h. */
const motorwayAssist: RowGroup[] = assistGone;
const lampLit: RowGroup[] = [["Steering warning lamp, switched side", idle]];
const stopped: RowGroup[] = [...assistGone, ...lampLit];
const signal1: RowGroup = ["Torque signal 1", on, idle, right, left];
const signal2: RowGroup = ["Torque signal 2", on, idle, right, left];
const supplyAtModule: RowGroup = ["Torque sensor supply TS+", on, idle, right];
const supplyAtSensor: RowGroup = ["Torque sensor supply at the sensor", on];
const groundAtSensor: RowGroup = ["Torque sensor ground at the sensor", on];
const sensorDead: RowGroup[] = [supplyAtModule, supplyAtSensor, signal1, signal2];
const asleep: RowGroup[] = [["Ignition feed 15", on, crank, idle], ...sensorDead, ...stopped];
const canHigh: RowGroup = ["CAN high", on, idle];
const canLow: RowGroup = ["CAN low", on, idle];
/** Some seconds after key-off the body module is still awake and holds the bus. */
const canHighAwake: RowGroup = ["CAN high", off];
const canLowAwake: RowGroup = ["CAN low", off];
const ignitionWire: RowGroup = ["Ignition feed wire to battery negative", "key off, X11 unplugged"];
const steeringOffBus: RowGroup = ["CAN at the steering connector", "key off, X11 unplugged"];
const motorOhms: RowGroup = ["Assist motor", "key off, X13 unplugged"];

export const expectedDifferences: Readonly<Record<string, ExpectedDifference>> = {
  "battery-feed-fuse-blown": {
    rows: [["Battery feed 30", off, on, crank, idle, right, left, fast], ...stopped],
    because:
      "The open fuse takes the battery feed away in every condition, so no motor current flows and the lamp is lit. The module lives on its ignition feed: sensor supply and signals stay right.",
  },
  "battery-feed-contact-open": {
    rows: stopped,
    because:
      "The contact is open between the wire and the module. Back-probed at the wire, the feed still shows battery voltage: only the missing motor voltage and the lamp betray it.",
  },
  "ignition-feed-fuse-blown": {
    rows: [...asleep, ignitionWire],
    because:
      "Without ignition feed the module sleeps: no sensor supply, so no signals, no motor voltage; the cluster hears nothing and lights the lamp. The battery feed is untouched. In ohms the wire no longer leads through the fuse to the relay coils and modules on terminal 15.",
  },
  "ignition-feed-short": {
    rows: [...asleep, ignitionWire],
    because:
      "The short blows F11 as soon as the key is on, and everything is as with the blown fuse. The short itself shows in ohms from the wire to ground.",
  },
  "ignition-feed-short-dash": {
    rows: [...asleep, ignitionWire],
    because:
      "As behind any blown ignition fuse, and the wire reads nearly nothing to ground with the key off.",
  },
  "ignition-feed-short-column": {
    rows: [...asleep, ignitionWire],
    because:
      "As behind any blown ignition fuse, and the wire reads nearly nothing to ground with the key off.",
  },
  "power-ground-ring": {
    rows: [
      ["Power ground 31P", right, left, fast],
      ["Motor M+ against M−", right, left],
      ["Motor M− to battery negative", right],
    ],
    because:
      "Motor current through the bad ring lifts the power ground by volts, more the more current flows, and the idle motor terminal with it; the bridge runs out of voltage. Without effort nothing flows and nothing shows, and 0.3 Ω disappears in an ohms reading.",
  },
  "power-ground-contact": {
    rows: [
      ["Motor M+ against M−", right, left],
      ["Motor M− to battery negative", right],
    ],
    because:
      "The bad contact lies between the wire and the module: the wire's side stays near 0 V. The motor gets less than it should, and its idle terminal, which the module ties to its power ground, stands volts above the battery's negative post.",
  },
  "motor-contact-resistance": {
    rows: [["Motor M+ against M−", right, left]],
    because:
      "The bad contact lies between module and motor wire. Feed and power ground stay right under load; only the motor gets less than it should. With X13 apart the contact is out of the circuit and ohms show a healthy motor.",
  },
  "weak-battery": {
    rows: [
      ["Battery feed 30", off, on, crank],
      ["Ignition feed 15", on, crank],
      ["Battery", off, on, crank],
    ],
    because:
      "A tired battery rests half a volt lower and collapses while cranking; whatever hangs on it follows. With the engine running the alternator hides it.",
  },
  "body-ground-strap": {
    rows: [
      ["Body against battery negative", on, crank, right],
      ["Battery", crank],
      ["Battery feed 30", crank],
      ["Ignition feed 15", crank],
      ["Power ground 31P", idle, right, left, fast],
      ["Signal ground 31S", on, idle, right],
      supplyAtModule,
      ["Torque sensor ground TS−", on, idle],
      groundAtSensor,
      signal1,
      signal2,
      ["Motor M− to battery negative", idle, right],
      canHigh,
      canLow,
      ["Steering warning lamp, switched side", on],
    ],
    because:
      "Every battery current crosses the bad ring between body and negative post. Cranking lifts the body by volts, so less current flows and the battery itself sags less. With the key on the body stands 0.15 V above the post, with the engine running 0.2 V below it, because then the current charges: everything that refers to the body shifts by that much against the post, while values taken between two points of the car are right.",
  },
  "ignition-feed-contact-corroded": {
    rows: [["Ignition feed 15", on, crank, idle], ...lampLit, ignitionWire],
    because:
      "The module's own current drops volts at the corroded contact while it is awake. The sensor supply is regulated and stays at 5 V; the module reports the low feed and assists on. In ohms the contact stands in series with the relay coils and modules on terminal 15, some 15 Ω.",
  },
  "signal-ground-contact-corroded": {
    rows: [
      ["Signal ground 31S", on, idle, right],
      supplyAtModule,
      ["Torque sensor ground TS−", on, idle],
      groundAtSensor,
      signal1,
      signal2,
      canHigh,
      canLow,
      ...lampLit,
      ["Signal ground to battery negative", "key off, X11 unplugged"],
    ],
    because:
      "The module's own current lifts its signal ground by volts, and with it everything it supplies or refers to that ground: sensor supply, sensor ground, signals, its share of the bus. Against each other they are right, so the supply across the sensor still reads 5 V.",
  },
  "sensor-ground-wire-open": {
    rows: [signal1, signal2, supplyAtSensor, groundAtSensor, ...stopped],
    because:
      "Without its ground the sensor floats up to its supply: both signals and the sensor's ground pin read nearly 5 V against the body, nothing across the sensor. The module's end of the broken wire stays at 0 V.",
  },
  "sensor-ground-pin-module": {
    rows: [
      signal1,
      signal2,
      supplyAtSensor,
      groundAtSensor,
      ["Torque sensor ground TS−", on, idle],
      ...stopped,
    ],
    because:
      "As with the broken wire, but the contact at the module is open: the wire's side of that contact floats up too.",
  },
  "sensor-ground-pin-sensor": {
    rows: [signal1, signal2, ...stopped],
    because:
      "The contact at the sensor is open: its wire's side still has 0 V, and supply to ground at that connector reads 5 V. Only the signals are wrong.",
  },
  "sensor-supply-short-to-ground": {
    rows: [
      ...sensorDead,
      ...stopped,
      ["Sensor supply wire to battery negative", "key off, X12 and X15 unplugged"],
    ],
    because:
      "The module limits its sensor supply to some tens of milliamps, so the short pulls it to a few tenths of a volt; the signals follow. Ohms show the short when both ends are unplugged.",
  },
  "sensor-supply-short-to-sensor-ground": {
    rows: [...sensorDead, ...stopped],
    because:
      "As with the short to the body, but the other wire is the sensor ground: with both ends unplugged neither wire leads to the body, and ohms to battery negative show nothing.",
  },
  "signal-1-wire-open": {
    rows: [signal1, ...stopped],
    because: "The module pulls its open input to 0 V. Signal 2, supply and ground stay right.",
  },
  "signal-2-wire-open": {
    rows: [signal2, ...stopped],
    because: "The module pulls its open input to 0 V. Signal 1, supply and ground stay right.",
  },
  "signal-1-pin-sensor": {
    rows: [signal1, ...stopped],
    because: "Open at the sensor's end: the whole wire hangs on the module's pull-down and reads 0 V.",
  },
  "signal-2-open-inside": {
    rows: [signal2, ...stopped],
    because: "Open inside the sensor: connector, wire and input hang on the module's pull-down and read 0 V.",
  },
  "signal-1-high": {
    rows: [signal1, ["Motor M+ against M−", idle, right, left, fast]],
    because:
      "Signal 1 is a quarter of a volt too high everywhere. The module takes half of that for effort to the right: motor voltage without effort, more to the right, less to the left. No code, no lamp.",
  },
  "signal-2-high": {
    rows: [signal2, ["Motor M+ against M−", idle, right, left, fast], ["Motor M− to battery negative", idle]],
    because:
      "Signal 2 too high looks like effort to the left: the mirror image of signal 1 too high. Pushing left, the bridge drives M− instead of tying it to ground.",
  },
  "signal-1-low": {
    rows: [signal1, ["Motor M+ against M−", idle, right, left, fast], ["Motor M− to battery negative", idle]],
    because: "Signal 1 too low looks like effort to the left, and the bridge drives M−.",
  },
  "signal-1-to-sensor-supply": {
    rows: [signal1, ...stopped],
    because: "Signal 1 sits at the sensor supply. Supply, ground and signal 2 stay right.",
  },
  "signal-1-to-ignition-feed": {
    rows: [signal1, ...stopped, ["Signal 1 wire to battery negative", "key off, X12 and X15 unplugged"]],
    because:
      "Signal 1 sits at battery voltage while the key is on. In ohms the wire leads through the relay coils and modules on terminal 15 to ground.",
  },
  "motor-hot": {
    rows: assistGone,
    because:
      "The module gives the hot motor only a part of the target current. Feeds, grounds, sensor and lamp are as always, because nothing is broken.",
  },
  "works-as-designed": { rows: [], because: "Nothing is wrong: the chart is the healthy one, row for row." },
  "motor-winding-open": {
    rows: [...assistGone, motorOhms],
    because:
      "No current can flow; once the module has noticed it stops driving. Without effort nothing is asked of the motor, so the lamp stays out until somebody turns the wheel. Ohms show the open winding.",
  },
  "motor-contact-open": {
    rows: assistGone,
    because:
      "As with the open winding, but the open contact is between module and wire: with X13 apart the motor's side reads the healthy winding.",
  },
  "power-ground-open": {
    rows: [...assistGone, ["Power ground to battery negative", "key off, X10 unplugged"]],
    because:
      "Without a way back no motor current flows, which the module takes for an open motor circuit and stops driving. From then on the dead wire reads 0 V like a good ground: only ohms, or a load of one's own, tell.",
  },
  "can-high-brake-wire-open": {
    rows: [...motorwayAssist, ...lampLit, canHigh],
    because:
      "Nobody hears the brake module. The steering misses the road speed, assumes 90 km/h and lights the lamp: too little assist at standstill, a little more than usual at 100 km/h. While the brake module talks it pulls the low wire alone, and through the terminators the high wire follows: its average falls.",
  },
  "can-low-brake-wire-open": {
    rows: [...motorwayAssist, ...lampLit, canLow],
    because:
      "The mirror image: while the brake module talks it lifts the high wire alone and the low wire follows, so the low wire's average rises.",
  },
  "can-high-brake-contact-open": {
    rows: [...motorwayAssist, ...lampLit, canHigh],
    because: "As with the broken wire; the place is the contact in X21.",
  },
  "can-high-steering-wire-open": {
    rows: [...lampLit, steeringOffBus, canHigh, canHighAwake],
    because:
      "The steering is not heard, so the cluster lights the lamp; it still hears the others on one wire, so the assist is right. At its connector the terminators are out of reach, and its own piece of CAN high only carries what it drives itself.",
  },
  "can-low-steering-wire-open": {
    rows: [...lampLit, steeringOffBus, canLow, canLowAwake],
    because: "As with the other wire: one open wire is enough to silence the steering.",
  },
  "can-low-steering-contact-open": {
    rows: [...lampLit, steeringOffBus, canLow, canLowAwake],
    because: "As with the open wire; the place is the contact in X31.",
  },
  "can-high-to-ground-column": {
    rows: [
      ...motorwayAssist,
      ...lampLit,
      canHigh,
      canLow,
      canHighAwake,
      canLowAwake,
      ["CAN high to battery negative", off],
    ],
    because:
      "The terminators join both wires, so one wire on ground holds both near 0 V. Nobody hears anybody: assist at its motorway level, lamp lit. Between the wires there are still 60 Ω.",
  },
  "can-high-to-ground-bulkhead": {
    rows: [
      ...motorwayAssist,
      ...lampLit,
      canHigh,
      canLow,
      canHighAwake,
      canLowAwake,
      ["CAN high to battery negative", off],
    ],
    because: "As with the short at the column: a bus is one circuit from end to end.",
  },
};
