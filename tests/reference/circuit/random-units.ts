import { type DrawDevice, resistor } from "./random-draw";

/** What a vehicle bolts on as a unit: fed from near the battery, with a load of its own. */
export const unitDraws = {
  motors: (i, { nearSupply, random, ground }) => [
    {
      kind: "motor",
      id: `motor${i}`,
      plus: nearSupply(),
      minus: ground,
      ohms: random.decades(0.2, 5),
      motorConstant: random.decades(0.01, 0.1),
      viscousFriction: random.decades(1e-5, 1e-4),
      loadPerSpeedSquared: random.chance(0.5) ? 1e-6 : 0,
    },
  ],
  batteries: (i, { nearSupply, random, ground }) => [
    {
      kind: "battery",
      id: `second${i}`,
      positive: nearSupply(),
      negative: ground,
      capacityAmpereHours: random.between(30, 100),
      stateOfCharge: random.integer(0, 10) / 10,
      celsius: random.between(-20, 40),
      resistanceScale: random.between(1, 4),
    },
  ],
  alternators: (i, { nearSupply, random, ground }) => [
    {
      kind: "alternator",
      id: `alternator${i}`,
      plus: nearSupply(),
      minus: ground,
      radiansPerSecond: random.between(0, 900),
      regulatedVolts: random.between(12.4, 14.6),
    },
  ],
  relays: (i, { nearSupply, random, ground }) => {
    const [coil, load] = [`coil${i}`, `switched${i}`];
    // Well above pull-in or well below drop-out.
    const feed = resistor(`coilFeed${i}`, nearSupply(), coil, random.chance(0.6) ? 1 : 1e3);
    const ends = { coilPlus: coil, coilMinus: ground, common: nearSupply(), normallyOpen: load };
    const across = random.chance(0.5) ? ({ suppressor: "resistor" } as const) : {};
    return [
      feed,
      resistor(`switchedLoad${i}`, load, ground, random.decades(10, 1e3)),
      { kind: "relay", id: `relay${i}`, ...ends, ...across },
    ];
  },
  comparators: (i, { nearSupply, pair, random, ground }) => {
    const output = `compared${i}`;
    const [input] = pair();
    const ends = { a: nearSupply(), b: output, positive: input, negative: ground };
    return [
      resistor(`comparedLoad${i}`, output, ground, random.decades(100, 1e4)),
      {
        kind: "comparator",
        id: `comparator${i}`,
        ...ends,
        thresholdVolts: random.between(0.5, 11),
        closesBelow: random.chance(0.5),
      },
    ];
  },
  drivers: (i, { nearSupply, random, ground }) => {
    const output = `driven${i}`;
    const [type, far] = random.chance(0.5)
      ? (["highSide", ground] as const)
      : (["lowSide", nearSupply()] as const);
    const law = { onOhms: random.decades(5e-3, 1), on: random.chance(0.7) };
    const limit = random.chance(0.5) ? { limitAmps: random.decades(0.5, 10) } : {};
    return [
      resistor(`drivenLoad${i}`, output, far, random.decades(2, 1e3)),
      { kind: "driver", id: `driver${i}`, type, output, supply: nearSupply(), ground, ...law, ...limit },
    ];
  },
} satisfies Record<string, DrawDevice>;
