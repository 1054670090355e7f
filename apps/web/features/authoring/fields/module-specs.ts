import { choice, type FieldSpec, group, list, number, other, text } from "./field-spec";

const ownTerminal = (key: string, label: string, optional = false): FieldSpec =>
  text(key, label, { code: true, suggest: "ownTerminals", ...(optional ? { optional } : {}) });
const formula = (key: string, label: string, hint?: string): FieldSpec =>
  other("expression", key, label, { inModule: true, ...(hint === undefined ? {} : { hint }) });
const name = text("name", "Name", { code: true });

const sends = list("sends", "Sends", {
  item: "message",
  nameKey: "message",
  shapes: [
    {
      label: "Message",
      start: { message: "message", value: 0 },
      fields: [text("message", "Message", { code: true }), formula("value", "Value")],
    },
  ],
});
const receives = list("receives", "Receives", {
  item: "message",
  nameKey: "message",
  shapes: [
    {
      label: "Message",
      start: { message: "message", from: "A1", substitute: 0 },
      fields: [
        text("message", "Message", { code: true }),
        text("from", "From module", { code: true, suggest: "modules" }),
        number("substitute", "While it is not heard", "", { hint: "The value the law goes on with." }),
      ],
    },
  ],
});
const bridgeEnds = [
  name,
  ownTerminal("plus", "Plus terminal"),
  ownTerminal("minus", "Minus terminal"),
  ownTerminal("feed", "Power from"),
  ownTerminal("return", "Power back to"),
];
const driver = [
  name,
  ownTerminal("terminal", "Terminal"),
  formula("on", "On while", "For example volts(T1) > 2.5 and not overheated."),
  number("onOhms", "Resistance while on", "Ω"),
  ownTerminal("through", "Current by way of", true),
  number("limitAmps", "Limits its current to", "A", { optional: true }),
];
const driverStart = { name: "output", terminal: "", on: 1, onOhms: 0.05 };

/** The form of a control module: what it measures, its law, what it drives, what it watches. */
export const moduleFields: readonly FieldSpec[] = [
  list("terminals", "Terminals", {
    item: "terminal",
    nameKey: "name",
    shapes: [
      {
        label: "Terminal",
        start: { name: "1", function: "" },
        fields: [text("name", "Terminal", { code: true }), text("function", "Function")],
      },
    ],
  }),
  ownTerminal("ground", "Ground terminal"),
  number("internalGroundOhms", "Ground path inside", "Ω"),
  list("groundLinks", "Further ground terminals", {
    item: "ground terminal",
    nameKey: "terminal",
    shapes: [
      {
        label: "Ground terminal",
        start: { terminal: "", ohms: 0.02 },
        fields: [ownTerminal("terminal", "Terminal"), number("ohms", "Joined through", "Ω")],
      },
    ],
  }),
  list("internalLinks", "Terminals joined inside", {
    item: "link",
    nameKey: "from",
    shapes: [
      {
        label: "Link",
        start: { from: "", to: "", ohms: 0.02 },
        fields: [ownTerminal("from", "From"), ownTerminal("to", "To"), number("ohms", "Through", "Ω")],
      },
    ],
  }),
  group("supply", "Supply", [
    ownTerminal("terminal", "Terminal"),
    number("wakeVolts", "Switches on at", "V"),
    number("dropoutVolts", "Switches off below", "V"),
    number("quiescentAmps", "Current while off", "A"),
    number("runningAmps", "Current while on", "A"),
    group(
      "sleep",
      "Falls asleep",
      [
        number("afterSeconds", "After", "s"),
        number("asleepAmps", "Current asleep", "A"),
        formula("stayAwake", "Stays awake while"),
      ],
      { optional: true, start: { afterSeconds: 120, asleepAmps: 0.002, stayAwake: 0 } },
    ),
  ]),
  list("inputs", "Inputs with a resistor inside", {
    item: "input",
    nameKey: "terminal",
    shapes: [
      {
        label: "Input",
        start: { terminal: "", pull: { to: "supply", ohms: 4700 } },
        fields: [
          ownTerminal("terminal", "Terminal"),
          group("pull", "Resistor", [other("pullTo", "to", "To"), number("ohms", "Resistance", "Ω")]),
          number("pulseSwingVolts", "Counts pulses of at least", "V", { optional: true }),
          ownTerminal("pulseAgainst", "Measured against terminal", true),
        ],
      },
    ],
  }),
  list("rails", "Sensor supplies", {
    item: "sensor supply",
    nameKey: "name",
    shapes: [
      {
        label: "Sensor supply",
        start: { name: "rail", terminal: "", volts: 5, limitAmps: 0.1 },
        fields: [
          name,
          ownTerminal("terminal", "Terminal"),
          number("volts", "Voltage", "V"),
          number("limitAmps", "Most current", "A"),
        ],
      },
    ],
  }),
  group(
    "bus",
    "CAN (ISO 11898)",
    [
      ownTerminal("canHigh", "CAN high terminal"),
      ownTerminal("canLow", "CAN low terminal"),
      number("terminationOhms", "Terminator inside", "Ω", { optional: true }),
      number("dominantShare", "Share of time it holds the bus dominant", "0 to 0.5"),
      sends,
      receives,
    ],
    { optional: true, start: { canHigh: "", canLow: "", dominantShare: 0.1, sends: [], receives: [] } },
  ),
  group(
    "lin",
    "One-wire bus (ISO 17987)",
    [
      ownTerminal("terminal", "Terminal"),
      choice("role", "Role", { master: "master", slave: "slave" }),
      number("dominantShare", "Share of time it holds the wire dominant", "0 to 0.5"),
      sends,
      receives,
    ],
    {
      optional: true,
      start: { terminal: "", role: "slave", dominantShare: 0.05, sends: [], receives: [] },
    },
  ),
  list("thermalEstimates", "Temperatures it computes", {
    item: "temperature",
    nameKey: "name",
    shapes: [
      {
        label: "Temperature",
        start: { name: "motorTemperature", watts: 0, ambient: 20, thermalOhms: 1, seconds: 120 },
        fields: [
          name,
          formula("watts", "Loss, W"),
          formula("ambient", "Air, °C"),
          number("thermalOhms", "Thermal resistance", "K/W"),
          number("seconds", "Time constant", "s"),
          text("motor", "Follows the motor", { optional: true, code: true, suggest: "motors" }),
        ],
      },
    ],
  }),
  list("signals", "Law: signals, worked out in this order", {
    item: "signal",
    nameKey: "name",
    shapes: [
      {
        label: "Signal",
        start: { name: "signal", value: 0 },
        fields: [name, formula("value", "Value")],
      },
    ],
  }),
  list("outputs", "Outputs", {
    item: "output",
    nameKey: "name",
    shapes: [
      { kind: "highSide", label: "Switch to supply (high side)", start: driverStart, fields: driver },
      { kind: "lowSide", label: "Switch to ground (low side)", start: driverStart, fields: driver },
      {
        kind: "bridge",
        label: "Bridge that regulates a current",
        start: {
          name: "bridge",
          plus: "",
          minus: "",
          feed: "",
          return: "",
          targetAmps: 0,
          bridgeOhms: 0.02,
          minimumFeedVolts: 8,
        },
        fields: [
          ...bridgeEnds,
          formula("targetAmps", "Current wanted, A"),
          number("bridgeOhms", "Resistance while on", "Ω"),
          number("minimumFeedVolts", "Works above", "V"),
        ],
      },
      {
        kind: "chopper",
        label: "Pulse-width half bridge",
        start: {
          name: "chopper",
          plus: "",
          minus: "",
          feed: "",
          return: "",
          duty: 0,
          hertz: 100,
          onOhms: 0.02,
        },
        fields: [
          ...bridgeEnds,
          formula("duty", "Duty, 0 to 1"),
          number("hertz", "Frequency", "Hz"),
          number("onOhms", "Resistance while on", "Ω"),
        ],
      },
      {
        kind: "linear",
        label: "Linear low side",
        start: { name: "linear", terminal: "", feed: "", loadVolts: 0, onOhms: 0.05 },
        fields: [
          name,
          ownTerminal("terminal", "Terminal"),
          ownTerminal("feed", "Feed of the load"),
          formula("loadVolts", "Volts left for the load"),
          number("onOhms", "Resistance fully on", "Ω"),
        ],
      },
    ],
  }),
  list("monitors", "Monitors and fault codes", {
    item: "monitor",
    nameKey: "code",
    shapes: [
      {
        label: "Monitor",
        start: {
          code: "B1000-13",
          text: "",
          fails: 0,
          matureSeconds: 1,
          hold: "keyCycle",
          warningLamp: false,
        },
        fields: [
          text("code", "Code", { code: true, hint: "SAE J2012: C1511 or U0131-87." }),
          text("text", "Text"),
          other("lines", "causes", "Usual causes", { optional: true, hint: "One a line." }),
          other("expression", "enable", "Watches while", { optional: true, inModule: true }),
          formula("fails", "Fails when"),
          number("matureSeconds", "Sets after", "s"),
          choice("hold", "Stays", { live: "only while it fails", keyCycle: "until the key has been off" }),
          other("flag", "warningLamp", "Lights its warning lamp"),
        ],
      },
    ],
  }),
  list("scanValues", "Live data", {
    item: "value",
    nameKey: "name",
    shapes: [
      {
        label: "Value",
        start: { name: "supplyVolts", title: "Supply voltage", unit: "V", decimals: 1, value: 0 },
        fields: [
          name,
          text("title", "Title"),
          text("unit", "Unit"),
          number("decimals", "Decimals"),
          formula("value", "Value"),
        ],
      },
    ],
  }),
];
