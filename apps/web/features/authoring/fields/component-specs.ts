import type { Component } from "@probeworthy/vehicle";
import { composedFields } from "./composed-specs";
import { choice, type FieldSpec, group, list, number, other, text } from "./field-spec";
import { moduleFields } from "./module-specs";

export type ComponentKind = Component["kind"];

export interface ComponentSpec {
  readonly title: string;
  /** Letter code of its designators (IEC 81346-2). */
  readonly letter: string;
  /** One line for the list of kinds: what it is, which terminals it has. */
  readonly about: string;
  readonly fields: readonly FieldSpec[];
  /** Everything beside id, title and kind that a new one has. */
  readonly start: Readonly<Record<string, unknown>>;
}

const ohms = (key: string, label: string, hint?: string): FieldSpec =>
  number(key, label, "Ω", hint === undefined ? {} : { hint });
const terminal = (key: string, label: string, optional = false): FieldSpec =>
  text(key, label, { code: true, ...(optional ? { optional } : {}) });

/** The form of every kind of component, in the order they are offered. */
export const componentSpecs: Readonly<Record<ComponentKind, ComponentSpec>> = {
  battery: {
    title: "Battery",
    letter: "G",
    about: "Terminals + and −. Volts follow its state of charge.",
    fields: [
      number("capacityAmpereHours", "Capacity", "A·h"),
      ohms("internalOhms", "Internal resistance", "A good starter battery has 5 to 8 mΩ: 0.006."),
      number("stateOfCharge", "State of charge", "0 to 1", { hint: "1 is full." }),
    ],
    start: { capacityAmpereHours: 60, internalOhms: 0.006, stateOfCharge: 0.9 },
  },
  chargingSource: {
    title: "Alternator",
    letter: "G",
    about: "Terminals B+ and 31. Charges while the engine turns.",
    fields: [
      number("regulatedVolts", "Regulated voltage", "V"),
      ohms("outputOhms", "Output resistance"),
      number("limitAmps", "Most current", "A"),
      text("speedCondition", "Engine speed is the condition", { suggest: "numberConditions", code: true }),
      number("minimumSpeed", "Charges above", "1/min"),
      choice(
        "sense",
        "Regulator looks at",
        { own: "its own B+", wire: "the wire at its terminal S" },
        { optional: true },
      ),
      number("lampOhms", "Charge lamp terminal D+", "Ω", {
        optional: true,
        hint: "Empty: it has no terminal D+.",
      }),
    ],
    start: {
      regulatedVolts: 14.2,
      outputOhms: 0.02,
      limitAmps: 90,
      speedCondition: "engineSpeed",
      minimumSpeed: 500,
    },
  },
  fuse: {
    title: "Fuse",
    letter: "F",
    about: "Terminals 1 and 2, both sockets of its holder.",
    fields: [
      number("ratingAmps", "Rating", "A"),
      choice("form", "Form", {
        F: "small blade (type F)",
        C: "medium blade (type C)",
        E: "large blade (type E)",
        bolted: "bolted strip",
      }),
      ohms("coldOhms", "Cold resistance", "About 0.05 divided by the rating."),
    ],
    start: { ratingAmps: 15, form: "C", coldOhms: 0.0045 },
  },
  switch: {
    title: "Switch",
    letter: "S",
    about: "Your own terminals, joined in pairs by the position of a condition.",
    fields: [
      other("names", "terminals", "Terminals", { hint: "Parted by spaces: 30 15 50." }),
      text("condition", "Worked by the condition", { suggest: "choiceConditions", code: true }),
      other("positions", "positions", "What it joins in each position"),
      ohms("contactOhms", "Contact resistance"),
    ],
    start: { terminals: ["1", "2"], condition: "", positions: {}, contactOhms: 0.01 },
  },
  relay: {
    title: "Relay",
    letter: "K",
    about: "Coil 86 and 85, contact 30, 87 and 87a (DIN 72552).",
    fields: [
      choice("contact", "Contact", { make: "make (30, 87)", changeOver: "change-over (30, 87, 87a)" }),
      ohms("coilOhms", "Coil at 20 °C"),
      number("pullInVolts", "Pulls in at", "V"),
      number("dropOutVolts", "Drops out below", "V"),
      ohms("contactOhms", "Contact resistance"),
      choice(
        "suppressor",
        "Across the coil",
        { none: "nothing", resistor: "a resistor", diode: "a diode, cathode at 86" },
        { optional: true },
      ),
      number("suppressorOhms", "Suppressor resistor", "Ω", { optional: true, hint: "Empty: 680." }),
      group(
        "terminals",
        "Other terminal names",
        [
          terminal("coilPlus", "Coil, plus"),
          terminal("coilMinus", "Coil, minus"),
          terminal("common", "Contact, common"),
          terminal("make", "Contact, make"),
          terminal("break", "Contact, break", true),
        ],
        { optional: true, start: { coilPlus: "86", coilMinus: "85", common: "30", make: "87" } },
      ),
    ],
    start: {
      contact: "make",
      coilOhms: 85,
      pullInVolts: 7.5,
      dropOutVolts: 3,
      contactOhms: 0.01,
      suppressor: "none",
    },
  },
  lamp: {
    title: "Lamp",
    letter: "E",
    about: "Terminals 1 and 2. Cold filament and inrush follow from its rating.",
    fields: [number("ratedVolts", "Rated voltage", "V"), number("ratedWatts", "Rated power", "W")],
    start: { ratedVolts: 12, ratedWatts: 21 },
  },
  twoFilamentLamp: {
    title: "Lamp with two filaments",
    letter: "E",
    about: "Brake and tail, dipped and main beam: two filaments to one common terminal.",
    fields: [
      group("terminals", "Terminals", [
        terminal("common", "Common"),
        terminal("first", "First filament"),
        terminal("second", "Second filament"),
      ]),
      number("ratedVolts", "Rated voltage", "V"),
      number("firstWatts", "First filament", "W"),
      number("secondWatts", "Second filament", "W"),
    ],
    start: {
      terminals: { common: "31", first: "56a", second: "56b" },
      ratedVolts: 12,
      firstWatts: 60,
      secondWatts: 55,
    },
  },
  ledLamp: {
    title: "LED lamp",
    letter: "E",
    about: "Terminals 1 (plus) and 2. A string of LEDs with its resistor.",
    fields: [
      number("forwardVolts", "Forward voltage of the string", "V"),
      number("ratedVolts", "Rated voltage", "V"),
      number("ratedAmps", "Rated current", "A"),
    ],
    start: { forwardVolts: 6.6, ratedVolts: 13.5, ratedAmps: 0.15 },
  },
  resistor: {
    title: "Resistor, heater, horn",
    letter: "R",
    about: "Terminals 1 and 2. Anything that is a resistance.",
    fields: [
      ohms("ohms", "Resistance"),
      choice(
        "form",
        "Drawn as",
        {
          resistor: "resistor",
          heater: "heater",
          horn: "horn",
          solenoid: "solenoid",
          terminator: "bus terminator",
        },
        { optional: true },
      ),
    ],
    start: { ohms: 100, form: "resistor" },
  },
  diode: {
    title: "Diode",
    letter: "V",
    about: "Terminals 1 (anode) and 2 (cathode).",
    fields: [
      number("breakdownVolts", "Breaks down at", "V", {
        optional: true,
        hint: "Empty: blocks whatever comes.",
      }),
    ],
    start: {},
  },
  motor: {
    title: "Motor",
    letter: "M",
    about: "Terminals 1 and 2. Brushed; held, or turning against a load.",
    fields: [
      ohms("windingOhmsAt20", "Winding at 20 °C"),
      number("torquePerAmp", "Torque constant", "N·m/A", {
        hint: "The same number is its back-EMF in V·s/rad.",
      }),
      group(
        "turning",
        "It turns",
        [
          number("frictionTorque", "Friction", "N·m"),
          other("expression", "loadTorque", "Load whatever the speed, N·m", { optional: true }),
          number("loadPerSpeed", "Load with speed", "N·m·s/rad", { optional: true }),
          number("loadPerSpeedSquared", "Load with speed squared (fan, pump)", "N·m·s²/rad²", {
            optional: true,
          }),
          other("expression", "held", "Held while", { optional: true, hint: "At an end stop, for example." }),
        ],
        { optional: true, start: { frictionTorque: 0.02 } },
      ),
      group(
        "gear",
        "Gear behind a coupling",
        [number("ratio", "Ratio"), number("efficiency", "Efficiency", "0 to 1")],
        { optional: true, start: { ratio: 20, efficiency: 0.8 } },
      ),
      group(
        "heat",
        "Heats up",
        [
          number("windingToHousing", "Winding to housing", "K/W"),
          number("housingToAmbient", "Housing to air", "K/W"),
          number("windingCapacity", "Winding stores", "J/K"),
          number("housingCapacity", "Housing stores", "J/K"),
          text("ambientCondition", "Air temperature is the condition", {
            suggest: "numberConditions",
            code: true,
          }),
        ],
        {
          optional: true,
          start: {
            windingToHousing: 1,
            housingToAmbient: 1.5,
            windingCapacity: 100,
            housingCapacity: 600,
            ambientCondition: "ambientTemperature",
          },
        },
      ),
    ],
    start: { windingOhmsAt20: 0.8, torquePerAmp: 0.03, turning: { frictionTorque: 0.02 } },
  },
  thermistor: {
    title: "Temperature sensor",
    letter: "B",
    about: "Terminals 1 and 2. Resistance falls with temperature, given by a table.",
    fields: [
      other("expression", "temperature", "Its temperature, °C", { hint: "A condition, for example." }),
      other("points", "table", "Resistance by temperature", { columns: ["°C", "Ω"] }),
    ],
    start: {
      temperature: 20,
      table: [
        [-20, 15000],
        [20, 2500],
        [60, 600],
        [100, 190],
      ],
    },
  },
  positionSensor: {
    title: "Position sensor",
    letter: "B",
    about: "Pedal, throttle, level: one or more tracks moved together.",
    fields: [
      other("expression", "position", "Position, 0 to 1", { hint: "For example accelerator / 100." }),
      list("tracks", "Tracks", {
        item: "track",
        nameKey: "signal",
        shapes: [
          {
            label: "Track",
            start: {
              supply: "1",
              ground: "2",
              signal: "3",
              atRest: 0.1,
              atFull: 0.9,
              trackOhms: 2000,
              outputOhms: 1000,
            },
            fields: [
              terminal("supply", "Supply terminal"),
              terminal("ground", "Ground terminal"),
              terminal("signal", "Signal terminal"),
              number("atRest", "At rest", "of supply"),
              number("atFull", "At full travel", "of supply"),
              ohms("trackOhms", "Track"),
              ohms("outputOhms", "In the wiper's lead"),
            ],
          },
        ],
      }),
    ],
    start: {
      position: 0,
      tracks: [
        {
          supply: "1",
          ground: "2",
          signal: "3",
          atRest: 0.1,
          atFull: 0.9,
          trackOhms: 2000,
          outputOhms: 1000,
        },
      ],
    },
  },
  torqueSensor: {
    title: "Torque sensor",
    letter: "B",
    about: "Dual mirrored outputs around half of its supply.",
    fields: [
      group("terminals", "Terminals", [
        terminal("supply", "Supply"),
        terminal("ground", "Ground"),
        terminal("signal1", "Signal 1"),
        terminal("signal2", "Signal 2"),
      ]),
      other("expression", "effort", "Torque, N·m", { hint: "Positive to the right." }),
      number("stiffness", "Stiffness", "N·m/°"),
      number("maximumTwist", "Twist at its stop", "°"),
      number("spanPerDegree", "Output for each degree", "of supply"),
      ohms("trackOhms", "Each track"),
      ohms("outputOhms", "In each output"),
      number("supplyAmps", "Supply current beside the tracks", "A"),
    ],
    start: {
      terminals: { supply: "1", ground: "2", signal1: "3", signal2: "4" },
      effort: 0,
      stiffness: 2,
      maximumTwist: 5,
      spanPerDegree: 0.08,
      trackOhms: 4000,
      outputOhms: 1000,
      supplyAmps: 0.008,
    },
  },
  activeSpeedSensor: {
    title: "Speed sensor, active",
    letter: "B",
    about: "Terminals 1 (supply) and 2 (signal). Draws one of two currents.",
    fields: [
      number("lowAmps", "Lower current", "A"),
      number("highAmps", "Higher current", "A"),
      number("minimumVolts", "Works above", "V"),
      other("expression", "hertz", "Pulses, Hz"),
    ],
    start: { lowAmps: 0.007, highAmps: 0.014, minimumVolts: 4.5, hertz: 0 },
  },
  passiveSpeedSensor: {
    title: "Speed sensor, passive",
    letter: "B",
    about: "Terminals 1 and 2. A coil at a toothed ring.",
    fields: [
      ohms("coilOhms", "Coil"),
      number("peakVoltsPerHertz", "Peak voltage", "V/Hz"),
      other("expression", "hertz", "Teeth, Hz"),
    ],
    start: { coilOhms: 1100, peakVoltsPerHertz: 0.005, hertz: 0 },
  },
  passive: {
    title: "Terminals only",
    letter: "X",
    about: "Joint box, diagnostic socket, capped connector.",
    fields: [
      other("names", "terminals", "Terminals", { hint: "Parted by spaces." }),
      group(
        "diagnosticSocket",
        "Diagnostic socket (SAE J1962)",
        [
          terminal("supply", "Supply"),
          terminal("ground", "Ground"),
          terminal("canHigh", "CAN high"),
          terminal("canLow", "CAN low"),
        ],
        { optional: true, start: { supply: "16", ground: "5", canHigh: "6", canLow: "14" } },
      ),
    ],
    start: { terminals: ["1", "2"] },
  },
  module: {
    title: "Control module",
    letter: "A",
    about: "Reads terminals, follows a law of its own, drives outputs, stores fault codes.",
    fields: moduleFields,
    start: {
      terminals: [
        { name: "30", function: "Supply" },
        { name: "31", function: "Ground" },
      ],
      ground: "31",
      internalGroundOhms: 0.02,
      supply: { terminal: "30", wakeVolts: 8, dropoutVolts: 6, quiescentAmps: 0.001, runningAmps: 0.15 },
      signals: [],
    },
  },
  composed: {
    title: "Composed of parts",
    letter: "U",
    about: "A kind that is missing here: put together from resistors, curves, switches, diodes, sources.",
    fields: composedFields,
    start: {
      terminals: ["1", "2"],
      parts: [{ kind: "resistor", name: "body", between: ["1", "2"], ohms: 100 }],
    },
  },
};

export const componentKindNames = Object.keys(componentSpecs) as ComponentKind[];

export const isComponentKind = (kind: unknown): kind is ComponentKind =>
  typeof kind === "string" && Object.hasOwn(componentSpecs, kind);
