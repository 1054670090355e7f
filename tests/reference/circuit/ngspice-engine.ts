import { Simulation } from "eecircuit-engine";

/** One finished run: every column that ngspice wrote, by its lower-case name. */
export interface NgspiceRun {
  readonly columns: ReadonlyMap<string, readonly number[]>;
  /** What ngspice printed, `print` lines of a `.control` block among them. */
  readonly printed: string;
  readonly complaints: readonly string[];
}

export interface NgspiceEngine {
  /** Runs the lines of a deck, without title and `.end`. A run that came to nothing has no columns. */
  run(lines: readonly string[]): Promise<NgspiceRun>;
}

/** ngspice keeps every deck it has read, a third of a megabyte for 150 nodes: a fresh one after so many. */
const runsOfOneEngine = 400;

/** ngspice 45 in WebAssembly (package eecircuit-engine). Decks run one after the other. */
export async function startEngine(): Promise<NgspiceEngine> {
  let simulation = await started();
  let runs = 0;
  return {
    async run(lines) {
      if (runs++ >= runsOfOneEngine) {
        simulation = await started();
        runs = 1;
      }
      const title = `run ${runs}`;
      simulation.setNetList([title, ...lines, ".end", ""].join("\n"));
      const { header, data } = await withoutNotes(() => simulation.runSim());
      // A run without a result leaves the file of the run before.
      const isFresh = header.startsWith(`Title: ${title}\n`);
      const columns = data.map(({ name, values }) => [name.toLowerCase(), values.map(realPart)] as const);
      return {
        columns: new Map(isFresh ? columns : []),
        printed: simulation.getInfo(),
        complaints: [...simulation.getError()],
      };
    },
  };
}

async function started(): Promise<Simulation> {
  const simulation = new Simulation();
  await simulation.start();
  // The package waits for ever for the file of a first run that fails, so the first one does not. Its last resort for an
  // operating point, to follow the network through time until it rests, may take hours and is left out.
  simulation.setNetList("first\nv1 a 0 1\n.op\n.control\noptran 1 1 1 0 0 0\n.endc\n.end\n");
  await simulation.runSim();
  return simulation;
}

const realPart = (value: number | { real: number }): number =>
  typeof value === "number" ? value : value.real;

/** The package sends each note on gmin and source stepping to the console too; `complaints` holds them all. */
async function withoutNotes<T>(run: () => Promise<T>): Promise<T> {
  const { error } = console;
  console.error = () => undefined;
  try {
    return await run();
  } finally {
    console.error = error;
  }
}
