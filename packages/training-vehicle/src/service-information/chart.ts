import { ohmRow as ohms, type Row, type Situation, voltRows as volts } from "./chart-rows";

const situation = (
  title: string,
  key: string,
  engineSpeed = 0,
  steeringEffort = 0,
  roadSpeed = 0,
): Situation => ({
  title,
  conditions: { key, engineSpeed, steeringEffort, roadSpeed },
});

const keyOff = situation("key off", "off");
const keyOn = situation("key on, engine off", "on");
const cranking = situation("cranking", "start");
const idle = situation("engine running, no effort", "on", 850);
const right = situation("engine running, 6 N·m to the right", "on", 850, 6);
const left = situation("engine running, 6 N·m to the left", "on", 850, -6);
const fast = situation("100 km/h, 6 N·m to the right", "on", 2600, 6, 100);

/** Which terminals, in which situations. The values are computed from the healthy vehicle, never typed. */
export const powerSteeringChart: Row[] = [
  ...volts("X10.1:h", "Battery feed 30", [keyOff, keyOn, cranking, idle, right, left, fast]),
  ...volts("X10.2:h", "Power ground 31P", [idle, right, left, fast]),
  ...volts("X11.2:h", "Ignition feed 15", [keyOff, keyOn, cranking, idle]),
  ...volts("X11.4:h", "Signal ground 31S", [keyOn, idle, right]),
  ...volts("X12.2:h", "Torque sensor supply TS+", [keyOff, keyOn, idle, right]),
  ...volts("X12.4:h", "Torque sensor ground TS−", [keyOff, keyOn, idle]),
  ...volts("X12.1:h", "Torque signal 1", [keyOff, keyOn, idle, right, left]),
  ...volts("X12.5:h", "Torque signal 2", [keyOff, keyOn, idle, right, left]),
  ...volts("X15.4:h", "Torque sensor supply at the sensor", [keyOn], "X15.1:h"),
  ...volts("X15.1:h", "Torque sensor ground at the sensor", [keyOn]),
  ...volts("X13.1:h", "Motor M+ against M−", [keyOn, idle, right, left, fast], "X13.2:h"),
  ...volts("X13.2:h", "Motor M− to battery negative", [idle, right]),
  ...volts("X11.5:h", "CAN high", [keyOff, keyOn, idle]),
  ...volts("X11.1:h", "CAN low", [keyOff, keyOn, idle]),
  ...volts("X22.9:h", "Steering warning lamp, switched side", [keyOn, idle]),
  ...volts("G1:+", "Battery", [keyOff, keyOn, cranking, idle, right], "G1:-"),
  ...volts("XE1:body", "Body against battery negative", [keyOn, cranking, right]),
  ohms("X80:6", "CAN, high against low at the diagnostic socket", [], "X80:14"),
  ohms("X80:6", "CAN, only the engine module's terminator", ["X105"], "X80:14"),
  ohms("X80:6", "CAN, only the terminator behind the cluster", ["X20"], "X80:14"),
  ohms("X11.5:h", "CAN at the steering connector", ["X11"], "X11.1:h"),
  ohms("X80:6", "CAN high to battery negative", []),
  ohms("X13.1:h", "Assist motor", ["X13"], "X13.2:h"),
  ohms("X11.4:h", "Signal ground to battery negative", ["X11"]),
  ohms("X10.2:h", "Power ground to battery negative", ["X10"]),
  ohms("X11.2:h", "Ignition feed wire to battery negative", ["X11"]),
  ohms("X12.2:h", "Sensor supply wire to battery negative", ["X12", "X15"]),
  ohms("X12.1:h", "Signal 1 wire to battery negative", ["X12", "X15"]),
  ohms("X12.5:h", "Signal 2 wire to battery negative", ["X12", "X15"]),
];
