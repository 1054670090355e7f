import type { OperatingPoint } from "@probeworthy/circuit";
import type { CanPlace } from "../compile/module/can-node";
import { ok, type Result } from "../result";
import type { VehicleError } from "../simulation/types";
import { type BusNode, canNode, type Levels, linNode } from "./bus-node";
import { type BusResponses, busResponses } from "./bus-responses";
import type { LiveCircuit } from "./live-circuit";
import type { ModuleRun } from "./module-run";
import type { StateShare, TimeShare } from "./time-share";

/** What a module receives, over either bus. */
const receivesOf = ({ module }: ModuleRun) =>
  (["can", "lin"] as const).flatMap((medium) =>
    ((medium === "can" ? module.component.bus : module.component.lin)?.receives ?? []).map((entry) => ({
      ...entry,
      medium,
    })),
  );
type Received = ReturnType<typeof receivesOf>[number];

/** At most half of the time a bus is held dominant. */
const mostDominant = 0.5;
/** A message that has been lost so often within a settle is not heard. */
const lossesAllowed = 2;

/** What talkers do to the network in the mean, and the states they put it in. */
export interface Talk {
  readonly shares: readonly TimeShare[];
  readonly states: readonly StateShare[];
}

/** The vehicle's buses: who talks, who hears, and what the wires do meanwhile. */
export class Buses {
  /** By module: whether it and the scan tool hear each other. */
  readonly tool = new Map<string, boolean>();
  private readonly nodes: readonly BusNode[];
  private readonly toolNode: BusNode | undefined;
  private readonly receives: ReadonlyMap<ModuleRun, readonly Received[]>;
  private readonly byId: ReadonlyMap<string, ModuleRun>;
  private readonly timesLost = new Map<string, number>();

  constructor(
    private readonly runs: readonly ModuleRun[],
    tool: CanPlace | undefined,
  ) {
    this.byId = new Map(runs.map((run) => [run.module.id, run]));
    this.toolNode = tool && canNode(tool, 0, undefined);
    this.nodes = runs.flatMap((run) => {
      const { can, lin, component } = run.module;
      return [
        ...(can ? [canNode(can, component.bus?.dominantShare ?? 0, run)] : []),
        ...(lin ? [linNode(lin, component.lin?.dominantShare ?? 0, run)] : []),
      ];
    });
    this.receives = new Map(runs.map((run) => [run, receivesOf(run)]));
    // Taken as heard until the wires say otherwise: the usual case needs no second look. A sleeper must not be woken so.
    for (const run of runs)
      for (const { message, from } of this.receives.get(run) ?? []) {
        const sender = this.byId.get(from);
        run.heard.set(
          message,
          !run.asleep &&
            !run.module.silent &&
            sender !== undefined &&
            !sender.asleep &&
            !sender.module.silent,
        );
      }
  }

  /** Evaluates all laws until no message changes; a loop of messages that never rests is left where it is. */
  exchange(): void {
    for (let round = 0; round <= this.runs.length + 1; round++) {
      for (const run of this.runs) this.deliver(run);
      let changed = false;
      for (const run of this.runs) changed = run.evaluate() || changed;
      if (!changed) return;
    }
  }

  private deliver(run: ModuleRun): void {
    for (const { message, from, substitute } of this.receives.get(run) ?? []) {
      const sender = this.byId.get(from);
      const arrives = run.powered && (sender?.awake ?? false) && (run.heard.get(message) ?? false);
      run.received.set(message, arrives ? (sender?.sent.get(message) ?? substitute) : substitute);
    }
  }

  /**
   * Lets every waking node talk in turn and sees who understands it. Answers what the talkers do to the wires, and for
   * how much of the time, when that agrees with what was taken for granted so far; nothing when the laws have to be
   * evaluated again. Each talker holds its bus dominant for its own share of the time; a bus rests at least half of it.
   */
  listen(recessive: OperatingPoint, live: LiveCircuit): Result<Talk | undefined, VehicleError> {
    const talkers = this.nodes.filter(({ run }) => run?.awake && !run.module.silent);
    const listeners = this.nodes.filter(({ run }) => run?.powered && !run.module.silent);
    const straight = [...talkers, ...(this.toolNode ? [this.toolNode] : [])].filter(
      ({ drivers }) => drivers.length > 0,
    );
    const found = straight.length > 0 ? busResponses(straight, recessive, live) : undefined;
    if (found && !found.ok) return found;
    const responses = found?.value;
    const shareOf = (node: BusNode): number => node.dominantShare * this.scale(talkers, node.medium);
    // The responses hold until the network is solved again, so what they say is taken down first.
    const shares: TimeShare[] = meanOf(responses, talkers, shareOf);
    const states: StateShare[] = [];
    const understood = new Map<BusNode, Set<BusNode>>();
    const toolHears = new Set<BusNode>();
    for (const sender of talkers) {
      const share = shareOf(sender);
      const known = responses?.levels(sender);
      let dominant: Levels;
      if (known) dominant = known;
      else {
        const point = drive(sender, live);
        if (!point.ok) return point;
        if (share > 0) shares.push({ point: point.value, share });
        dominant = point.value;
      }
      if (share > 0) states.push({ share, put: (there, set) => sender.drive(there, set) });
      for (const listener of listeners)
        if (listener !== sender && listener.medium === sender.medium && listener.hears(recessive, dominant))
          understood.set(listener, (understood.get(listener) ?? new Set()).add(sender));
      if (sender.medium === "can" && this.toolNode?.hears(recessive, dominant)) toolHears.add(sender);
    }
    if (this.toolNode) {
      const known = responses?.levels(this.toolNode);
      const dominant: Result<Levels, VehicleError> = known ? ok(known) : drive(this.toolNode, live);
      if (!dominant.ok) return dominant;
      for (const node of this.nodes)
        if (node.run && node.medium === "can")
          this.tool.set(node.run.module.id, toolHears.has(node) && node.hears(recessive, dominant.value));
    }
    return ok(this.takeOver(understood) ? undefined : { shares, states });
  }

  private scale(talkers: readonly BusNode[], medium: BusNode["medium"]): number {
    const total = talkers.reduce((sum, node) => sum + (node.medium === medium ? node.dominantShare : 0), 0);
    return total > mostDominant ? mostDominant / total : 1;
  }

  /** True when what is heard differs from what the laws were evaluated with. */
  private takeOver(understood: ReadonlyMap<BusNode, ReadonlySet<BusNode>>): boolean {
    let changed = false;
    for (const receiver of this.nodes) {
      const { run, medium } = receiver;
      if (!run) continue;
      for (const entry of this.receives.get(run) ?? []) {
        if (entry.medium !== medium) continue;
        const { message, from } = entry;
        const key = `${run.module.id} ${message}`;
        const lost = this.timesLost.get(key) ?? 0;
        const now = lost < lossesAllowed && this.gets(receiver, from, understood);
        if (now === (run.heard.get(message) ?? false)) continue;
        if (!now) this.timesLost.set(key, lost + 1);
        run.heard.set(message, now);
        changed = true;
      }
    }
    return changed;
  }

  /** A LIN slave talks when it hears the master's header, and a slave that listens has to hear the header too. */
  private gets(
    receiver: BusNode,
    from: string,
    understood: ReadonlyMap<BusNode, ReadonlySet<BusNode>>,
  ): boolean {
    const heard = understood.get(receiver);
    const sender = this.nodes.find(
      ({ run, medium }) => medium === receiver.medium && run?.module.id === from,
    );
    if (!sender || !heard?.has(sender)) return false;
    const hasHeader = (node: BusNode): boolean =>
      node.master || [...(understood.get(node) ?? [])].some(({ master }) => master);
    return receiver.medium === "can" || (hasHeader(receiver) && hasHeader(sender));
  }
}

/** The network while a node holds its bus dominant. */
function drive(node: BusNode, live: LiveCircuit): Result<OperatingPoint, VehicleError> {
  node.drive(true, live);
  const point = live.solve(false);
  node.drive(false, live);
  return point;
}

/** One point for all talkers whose effect is known without a solve. */
function meanOf(
  responses: BusResponses | undefined,
  talkers: readonly BusNode[],
  shareOf: (node: BusNode) => number,
): TimeShare[] {
  const shares = new Map(
    talkers.flatMap((node) => {
      const share = responses?.levels(node) ? shareOf(node) : 0;
      return share > 0 ? [[node, share] as const] : [];
    }),
  );
  const total = [...shares.values()].reduce((sum, share) => sum + share, 0);
  return responses && total > 0 ? [{ point: responses.mean(shares), share: total }] : [];
}
