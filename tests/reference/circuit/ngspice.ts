import type { CircuitElement, Network } from "@probeworthy/circuit";
import { Simulation } from "eecircuit-engine";

/** What ngspice makes of a network: volts by node name, amps by element id where it reports them. */
export interface NgspiceSolution {
  readonly volts: ReadonlyMap<string, number>;
  readonly amps: ReadonlyMap<string, number>;
}

export interface Ngspice {
  /**
   * `leaks` names nodes that get 1e12 Ω to ground, the leak our package gives a floating node. `guess` is a start
   * for networks on which ngspice does not converge by itself; it still has to satisfy its own equations.
   */
  solve(
    network: Network,
    help?: { leaks?: readonly string[]; guess?: (node: string) => number },
  ): Promise<NgspiceSolution>;
  /** Seconds of one operating point, its deck already written. */
  time(network: Network): Promise<number>;
}

/**
 * ngspice 45 works with k/q of an older table, 8.6173303e-5 V/K, and we with the exact one of 2019. The same thermal
 * voltage comes out at a temperature that is higher by this factor.
 */
const kelvinFactor = 1.380649e-23 / 1.602176634e-19 / (1.38064852e-23 / 1.6021766208e-19);

/**
 * Tolerances far below what is compared; results come back in binary, so no digits are lost in print. So tight that
 * rounding noise sometimes keeps ngspice from stopping: then it may have the looser ones.
 */
const tolerances = [
  "reltol=1e-10 abstol=1e-16 vntol=1e-13",
  "reltol=1e-9 abstol=1e-15 vntol=1e-12",
  "reltol=1e-8 abstol=1e-14 vntol=1e-11",
] as const;
const options = "gmin=1e-12 itl1=1000 itl6=1000 temp=27 tnom=27";

export async function startNgspice(): Promise<Ngspice> {
  const simulation = new Simulation();
  await simulation.start();
  const run = async (netlist: string) => {
    simulation.setNetList(netlist);
    const result = await simulation.runSim();
    return new Map(result.data.map((column) => [column.name.toLowerCase(), Number(column.values[0])]));
  };
  return {
    async time(network) {
      // Its own default tolerances: what anyone who calls ngspice would get.
      const netlist = finishDeck(writeNetlist(network), "reltol=1e-3", undefined);
      const start = performance.now();
      const values = await run(netlist);
      if (values.size === 0) throw new Error(`ngspice gave no answer: ${simulation.getError().join("; ")}`);
      return (performance.now() - start) / 1e3;
    },
    async solve(network, { leaks = [], guess } = {}) {
      const deck = writeNetlist(network, leaks);
      const attempts: { tolerance: string; hint: typeof guess }[] = [
        { tolerance: tolerances[0], hint: undefined },
      ];
      for (const tolerance of tolerances) attempts.push({ tolerance, hint: guess });
      for (const { tolerance, hint } of attempts) {
        const values = await run(finishDeck(deck, `${tolerance} savecurrents`, hint));
        const volts = pick(deck.voltNames, values);
        const amps = pick(deck.ampNames, values);
        if (volts && amps) return { volts, amps };
      }
      throw new Error(`ngspice found no operating point: ${simulation.getError().slice(-3).join("; ")}`);
    },
  };
}

/** Values under our names; undefined when ngspice left some out, which it does when it has not converged. */
function pick(names: ReadonlyMap<string, string>, values: ReadonlyMap<string, number>) {
  const found = new Map<string, number>();
  for (const [ours, theirs] of names) {
    const value = theirs === "0" ? 0 : values.get(theirs);
    if (value === undefined) return undefined;
    found.set(ours, value);
  }
  return found;
}

type Deck = ReturnType<typeof writeNetlist>;

function finishDeck(deck: Deck, tolerance: string, guess?: (node: string) => number): string {
  const nodesets = guess
    ? [...deck.voltNames].filter(([, v]) => v !== "0").map(([n, v]) => `.nodeset ${v}=${guess(n)}`)
    : [];
  const lines = [
    "probeworthy",
    ...deck.lines,
    ...nodesets,
    `.options ${tolerance} ${options}`,
    ".op",
    ".end",
    "",
  ];
  return lines.join("\n");
}

/** The network as the lines of an ngspice deck, with the names under which ngspice will report its nodes and currents. */
export function writeNetlist(network: Network, leaks: readonly string[] = []) {
  const nodes = new Map<string, string>([[network.ground, "0"]]);
  const node = (name: string | undefined): string => {
    if (name === undefined) throw new Error("A control node is missing.");
    const known = nodes.get(name);
    if (known !== undefined) return known;
    const made = `n${nodes.size}`;
    nodes.set(name, made);
    return made;
  };
  const ampNames = new Map<string, string>();
  const sensedBy = new Set<string>();
  for (const e of network.elements)
    if (e.kind === "controlledSource" && e.controlElement) sensedBy.add(e.controlElement);
  const index = new Map(network.elements.map((e, i) => [e.id, i]));
  const lines = network.elements.flatMap((element, i) => {
    const card = writeElement(element, i, node, index, sensedBy.has(element.id));
    if (card.amps !== undefined) ampNames.set(element.id, card.amps);
    return card.lines;
  });
  leaks.forEach((name, i) => {
    lines.push(`rleak${i} ${node(name)} 0 1e12`);
  });
  const voltNames = new Map(
    [...nodes].map(([ours, theirs]) => [ours, theirs === "0" ? "0" : `v(${theirs})`]),
  );
  return { lines, voltNames, ampNames };
}

interface Card {
  readonly lines: readonly string[];
  /** Name under which the element's current is reported, where it is. */
  readonly amps?: string;
}

function writeElement(
  element: CircuitElement,
  i: number,
  node: (name: string | undefined) => string,
  index: ReadonlyMap<string, number>,
  sensed: boolean,
): Card {
  switch (element.kind) {
    case "resistor": {
      const [a, b] = [node(element.a), node(element.b)];
      // A zero-volt source is how ngspice senses a current.
      if (sensed)
        return { lines: [`v${i} ${a} x${i} 0`, `r${i} x${i} ${b} ${element.ohms}`], amps: `i(v${i})` };
      return { lines: [`r${i} ${a} ${b} ${element.ohms}`], amps: `i(@r${i}[i])` };
    }
    case "voltageSource": {
      const [p, n] = [node(element.positive), node(element.negative)];
      const inner = element.ohms === undefined ? [] : [`rs${i} ${p} x${i} ${element.ohms}`];
      const plus = element.ohms === undefined ? p : `x${i}`;
      return { lines: [...inner, `v${i} ${plus} ${n} dc ${element.volts}`], amps: `i(v${i})` };
    }
    case "currentSource":
      return { lines: [`i${i} ${node(element.from)} ${node(element.to)} dc ${element.amps}`] };
    case "switch": {
      const [a, b] = [node(element.a), node(element.b)];
      const model = `.model sw${i} sw(vt=0.5 vh=0 ron=${element.closedOhms ?? 1e-3} roff=${element.openOhms ?? 1e12})`;
      const control = `vc${i} c${i} 0 ${element.closed ? 1 : 0}`;
      return { lines: [model, control, `s${i} ${a} ${b} c${i} 0 sw${i}`] };
    }
    case "diode": {
      const celsius = ((element.celsius ?? 27) + 273.15) * kelvinFactor - 273.15;
      const bv = element.breakdownVolts === undefined ? "" : `bv=${element.breakdownVolts} ibv=1e-3`;
      const rs = element.seriesOhms === undefined ? "" : `rs=${element.seriesOhms}`;
      const law = `is=${element.saturationAmps ?? 1e-14} n=${element.emission ?? 1} tnom=${celsius} ${rs} ${bv}`;
      const [a, c] = [node(element.anode), node(element.cathode)];
      return {
        lines: [`.model d${i}m d(${law})`, `d${i} ${a} ${c} d${i}m temp=${celsius}`],
        amps: `i(@d${i}[id])`,
      };
    }
    case "filament": {
      const { ratedVolts: v0, ratedWatts: w0, exponent = 0.55, coldRatio = 1 / 15 } = element;
      const cold = (coldRatio * v0 * v0) / w0;
      const knee = v0 / Math.sqrt(coldRatio ** (2 / (exponent - 1)) - 1);
      const [a, b] = [node(element.a), node(element.b)];
      const v = `v(${a},${b})`;
      return { lines: [`b${i} ${a} ${b} i=${v}/${cold}*(1+(${v}/${knee})^2)^(${(exponent - 1) / 2})`] };
    }
    case "regulator":
      return { lines: writeRegulator(element, i, node) };
    case "controlledSource": {
      const [p, n] = [node(element.positive), node(element.negative)];
      const letter = { vcvs: "e", vccs: "g", ccvs: "h", cccs: "f" }[element.type];
      if (element.type === "vcvs" || element.type === "vccs") {
        const control = `${node(element.controlPositive)} ${node(element.controlNegative)}`;
        return { lines: [`${letter}${i} ${p} ${n} ${control} ${element.gain}`] };
      }
      const control = `v${index.get(element.controlElement ?? "")}`;
      return { lines: [`${letter}${i} ${p} ${n} ${control} ${element.gain}`] };
    }
  }
}

/** The regulator's published equations (packages/circuit/src/devices/regulator.ts) as behavioural sources. */
function writeRegulator(
  element: CircuitElement & { kind: "regulator" },
  i: number,
  node: (name: string) => string,
): string[] {
  const [input, output, reference] = [node(element.input), node(element.output), node(element.reference)];
  const { volts, limitAmps, dropoutVolts = 0.5, quiescentAmps = 0, outputOhms = 0.01 } = element;
  const softplus = (x: string) => `(max(${x},0)+ln(1+exp(-abs(${x}))))`;
  const bend = limitAmps / 1000;
  const lack = `((${volts}-v(${input},${reference})+${dropoutVolts})/5e-3)`;
  return [
    `bt${i} t${i} 0 v=${volts}-5e-3*${softplus(lack)}`,
    `bz${i} z${i} 0 v=(v(t${i})-v(${output},${reference}))/${outputOhms * bend}`,
    `bo${i} ${input} ${output} i=${bend}*(${softplus(`v(z${i})`)}-${softplus(`(v(z${i})-1000)`)})`,
    `bq${i} ${input} ${reference} i=${quiescentAmps}*tanh(v(${input},${reference}))`,
    `rli${i} ${input} ${reference} 1e12`,
    `rlo${i} ${output} ${reference} 1e12`,
  ];
}
