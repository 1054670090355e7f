import type { Network } from "@probeworthy/circuit";
import { startEngine } from "./ngspice-engine";
import { type Netlist, writeDeck, writeNetlist } from "./ngspice-netlist";

export { writeNetlist } from "./ngspice-netlist";

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
}

/**
 * Tolerances far below what is compared (Newton's last step squares what is left); results come back in binary, so no
 * digits are lost in print. Tighter ones end in rounding noise on which ngspice does not stop.
 */
const tolerance = "reltol=1e-8 abstol=1e-14 vntol=1e-11";
/**
 * From nothing with either of ngspice's two solvers; only then from a guess. A guess costs digits: it is held by 1e10 S
 * at each node while the order of elimination is chosen, and KLU suffers less from an order that does not suit.
 */
const attempts = [
  { solver: "", isGuessed: false },
  { solver: "klu", isGuessed: false },
  { solver: "klu", isGuessed: true },
  { solver: "", isGuessed: true },
] as const;

export async function startNgspice(): Promise<Ngspice> {
  const engine = await startEngine();
  return {
    async solve(network, { leaks = [], guess } = {}) {
      const netlist = writeNetlist(network, leaks);
      let complaints: readonly string[] = [];
      for (const { solver, isGuessed } of attempts) {
        const start = isGuessed ? nodesets(netlist, guess) : [];
        const run = await engine.run(
          writeDeck(netlist, `${tolerance} ${solver} savecurrents`, [...start, ".op"]),
        );
        const volts = pick(netlist.voltNames, run.columns);
        const amps = pick(netlist.ampNames, run.columns);
        if (volts && amps) return { volts, amps };
        complaints = run.complaints;
      }
      throw new Error(`ngspice found no operating point: ${complaints.slice(-3).join("; ")}`);
    },
  };
}

const nodesets = ({ voltNames }: Netlist, start: ((node: string) => number) | undefined): string[] =>
  start ? [...voltNames].filter(([, v]) => v !== "0").map(([n, v]) => `.nodeset ${v}=${start(n)}`) : [];

/** Values under our names; undefined when ngspice left some out, which it does when it has not converged. */
function pick(names: ReadonlyMap<string, string>, columns: ReadonlyMap<string, readonly number[]>) {
  const found = new Map<string, number>();
  for (const [ours, theirs] of names) {
    const value = theirs === "0" ? 0 : columns.get(theirs)?.[0];
    if (value === undefined) return undefined;
    found.set(ours, value);
  }
  return found;
}
