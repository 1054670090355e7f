import { type Component, terminalsOf, type VehicleDocument } from "@probeworthy/vehicle";
import { type Branch, branchesOf, findBars, passes, withoutDeadEnds } from "./branches";
import type { End, ResolvedConductor } from "./conductor-ends";

/** An arrow to other sheets: `systems` are the ids of those that list what goes on there, the one to jump to first. */
export interface OutsideLink {
  readonly designator: string;
  readonly terminal?: string;
  readonly systems: readonly string[];
}

export interface Selection {
  /** In document order; an end that lies on another sheet has the kind `reference`, an unfed bar the kind `bar`. */
  readonly conductors: readonly ResolvedConductor[];
  /** By the joint of a `reference` end. */
  readonly outside: ReadonlyMap<string, OutsideLink>;
  /** Splices with branches that are left out here. */
  readonly splices: ReadonlyMap<string, OutsideLink>;
  /** Where the feed of a bar is drawn. */
  readonly bars: ReadonlyMap<string, OutsideLink>;
}

type Output = NonNullable<Extract<Component, { kind: "module" }>["outputs"]>[number];

const isHub = (kind: string | undefined) => kind === "battery" || kind === "chargingSource";
/**
 * What belongs on a system's sheet. A branch is everything joined through splices and in-line connectors; it stops at
 * terminals, ground points and bars.
 *
 * - All branches of the components that only this system lists.
 * - Of a component that several systems list (a module, a switch): its supply and ground, and the branches that reach
 *   another component of this system.
 * - Upwards from every fuse met so far, to its bar. Battery and generator join at the end, where something drawn needs
 *   them.
 * Tips a branch does not need are cut off; where it goes on to another system's part stands a reference.
 */
export function selectConductors(
  document: VehicleDocument,
  conductors: readonly ResolvedConductor[],
  systemId: string,
): Selection {
  const components = new Map(document.components.map((component) => [component.id, component]));
  const listedBy = (id: string) =>
    document.systems.filter((system) => system.components.includes(id)).map((system) => system.id);
  const own = new Set(document.systems.find((system) => system.id === systemId)?.components ?? []);
  const bars = findBars(document);
  const branches = branchesOf(conductors, bars);
  const kindOf = (end: End) => (end.kind === "terminal" ? components.get(end.owner)?.kind : undefined);
  const isListed = (end: End) => end.kind === "terminal" && own.has(end.owner);
  const isBar = (end: End) => end.kind === "splice" && bars.has(end.joint);
  const isFuse = (end: End) => kindOf(end) === "fuse";
  const isShared = (end: End) => {
    const component = components.get(end.owner);
    return (
      component !== undefined &&
      (isHub(component.kind) || (listedBy(end.owner).length > 1 && terminalsOf(component).length > 2))
    );
  };
  const tipsOf = (branch: Branch) =>
    branch.flatMap(({ from, to }) => [from, to]).filter((end) => !passes(end, bars));

  const branchesAt = new Map<string, Branch[]>();
  for (const branch of branches) {
    for (const owner of new Set(tipsOf(branch).map((end) => end.owner))) {
      branchesAt.set(owner, [...(branchesAt.get(owner) ?? []), branch]);
    }
  }
  /** True when the other side of a fuse hangs on a bar or the battery. */
  const isFedFuse = (end: End) =>
    isFuse(end) &&
    (branchesAt.get(end.owner) ?? []).some((branch) =>
      tipsOf(branch).some(
        (tip) =>
          isBar(tip) &&
          tipsOf(branch).some(
            (other) => other.owner === end.owner && other !== end && other.terminal !== end.terminal,
          ),
      ),
    );

  const belongs = (branch: Branch): boolean => {
    const tips = tipsOf(branch);
    const listed = tips.filter((end) => isListed(end) && !isHub(kindOf(end)));
    if (listed.some((end) => !isShared(end))) return true;
    if (new Set(listed.map((end) => end.owner)).size > 1) return true;
    return listed.some((end) => {
      const component = components.get(end.owner);
      if (component?.kind === "module") return isModuleSupply(component, end, tips);
      return tips.some(
        (tip) => isBar(tip) || isFedFuse(tip) || (component?.kind === "passive" && tip.kind === "ground"),
      );
    });
  };

  /** Supply and ground; feed and power ground of those outputs only that drive something of this system. */
  function isModuleSupply(
    module: Extract<Component, { kind: "module" }>,
    end: End,
    tips: readonly End[],
  ): boolean {
    const { terminal } = end;
    if (terminal === module.supply.terminal || terminal === module.ground) return true;
    const drivesHere = (output: Output): boolean =>
      ("plus" in output ? [output.plus, output.minus] : [output.terminal]).some((name) =>
        (branchesAt.get(module.id) ?? []).some((branch) => {
          const ends = tipsOf(branch);
          return (
            ends.some((tip) => tip.owner === module.id && tip.terminal === name) &&
            ends.some((tip) => isListed(tip) && !isShared(tip))
          );
        }),
      );
    const driving = (module.outputs ?? []).filter(drivesHere);
    if (
      driving.some(
        (output) =>
          "feed" in output &&
          (output.feed === terminal || ("return" in output && output.return === terminal)),
      )
    )
      return true;
    const isLink = (module.groundLinks ?? []).some((link) => link.terminal === terminal);
    return isLink && driving.length > 0 && tips.some((tip) => tip.kind === "ground");
  }

  const chosen = new Set<ResolvedConductor>();
  const isNeeded = (end: End) => end.kind === "ground" || isBar(end) || isListed(end) || isFuse(end);
  const take = (branch: Branch, isWanted: (end: End) => boolean): Branch => {
    const kept = withoutDeadEnds(branch, isWanted, bars);
    const enough =
      new Set(
        tipsOf(kept)
          .filter(isWanted)
          .map((end) => end.joint),
      ).size > 1;
    const taken = enough ? kept : branch;
    for (const conductor of taken) chosen.add(conductor);
    return taken;
  };
  const upwards: End[] = [];
  for (const branch of branches) {
    if (!belongs(branch)) continue;
    upwards.push(...tipsOf(take(branch, isNeeded)).filter((end) => isFuse(end) && !isListed(end)));
  }
  for (const fuse of upwards) {
    for (const branch of branchesAt.get(fuse.owner) ?? []) {
      const tips = tipsOf(branch);
      const isOtherSide = tips.some((end) => end.owner === fuse.owner && end.terminal !== fuse.terminal);
      if (!isOtherSide || branch.some((conductor) => chosen.has(conductor))) continue;
      const isWanted = (end: End) => isNeeded(end) || isHub(kindOf(end));
      upwards.push(
        ...tipsOf(take(branch, isWanted)).filter(
          (end) => isFuse(end) && !isListed(end) && end.owner !== fuse.owner,
        ),
      );
    }
  }
  joinHubs();
  return finish();

  /** Battery, generator and their cables, where they are listed or met, and what joins the bars already drawn. */
  function joinHubs(): void {
    for (let grew = true; grew; ) {
      grew = false;
      const drawn = new Set(tipsOf([...chosen]).map((end) => end.owner));
      for (const branch of branches) {
        if (branch.some((conductor) => chosen.has(conductor))) continue;
        const hubs = tipsOf(branch).filter(
          (end) => isHub(kindOf(end)) && (isListed(end) || drawn.has(end.owner)),
        );
        if (hubs.length === 0) continue;
        const isWanted = (end: End) => end.kind === "ground" || isListed(end) || drawn.has(end.owner);
        const kept = withoutDeadEnds(branch, isWanted, bars);
        if (!tipsOf(kept).some((end) => isHub(kindOf(end)))) continue;
        for (const conductor of kept) chosen.add(conductor);
        grew ||= kept.length > 0;
      }
    }
  }

  function finish(): Selection {
    const outside = new Map<string, OutsideLink>();
    const splices = new Map<string, OutsideLink>();
    const barLinks = new Map<string, OutsideLink>();
    const elsewhere = (designator: string) => listedBy(designator).filter((id) => id !== systemId);
    const fedBars = new Set(
      [...chosen].flatMap(({ from, to }) =>
        [
          [from, to],
          [to, from],
        ].flatMap(([bar, other]) =>
          bar !== undefined && other !== undefined && isBar(bar) && !feedsFuse(other) ? [bar.joint] : [],
        ),
      ),
    );
    /** The fuse's upper socket by convention; the lower one feeds something, perhaps the next bar. */
    function feedsFuse(other: End): boolean {
      return kindOf(other) === "fuse" && other.terminal === "1";
    }
    const place = (conductor: ResolvedConductor, end: End): End => {
      if (isBar(end)) {
        if (fedBars.has(end.joint)) return end;
        const feeders = conductors.flatMap(({ from, to }) =>
          from.joint === end.joint ? [to] : to.joint === end.joint ? [from] : [],
        );
        const feeds = feeders.filter((feeder) => feeder.kind === "terminal" && !feedsFuse(feeder));
        const systems = [...new Set(feeds.flatMap((feed) => elsewhere(feed.owner)))];
        barLinks.set(end.joint, { designator: end.owner, systems });
        return { ...end, kind: "bar" };
      }
      if (end.kind !== "terminal" || isListed(end) || isFuse(end) || isHub(kindOf(end))) return end;
      const systems = elsewhere(end.owner);
      if (systems.length === 0) return end;
      const terminal = end.connector === undefined ? end.terminal : `${end.connector}.${end.cavity ?? ""}`;
      const joint = `reference ${conductor.id} ${end.owner}`;
      outside.set(joint, {
        designator: end.owner,
        ...(terminal === undefined ? {} : { terminal }),
        systems,
      });
      return { joint, kind: "reference", owner: joint };
    };
    const placed = conductors
      .filter((conductor) => chosen.has(conductor))
      .map((conductor) => ({
        id: conductor.id,
        from: place(conductor, conductor.from),
        to: place(conductor, conductor.to),
      }));
    for (const branch of branches) {
      const left = branch.filter((conductor) => !chosen.has(conductor));
      if (left.length === 0 || left.length === branch.length) continue;
      if (tipsOf(branch).some((end) => end.kind === "ground")) continue;
      const joints = branch
        .filter((conductor) => chosen.has(conductor))
        .flatMap(({ from, to }) => [from, to]);
      for (const joint of new Set(joints.filter((end) => end.kind === "splice").map((end) => end.joint))) {
        const beyond = reachedFrom(joint, left);
        const owners = tipsOf(beyond).map((end) => end.owner);
        const systems = [...new Set(owners.flatMap(elsewhere))];
        if (systems.length > 0) splices.set(joint, { designator: owners[0] ?? joint, systems });
      }
    }
    return { conductors: placed, outside, splices, bars: barLinks };
  }

  function reachedFrom(joint: string, left: Branch): Branch {
    const found = new Set(left.filter(({ from, to }) => from.joint === joint || to.joint === joint));
    for (const { from, to } of found) {
      for (const end of [from, to]) {
        if (!passes(end, bars) || end.joint === joint) continue;
        for (const next of left)
          if (next.from.joint === end.joint || next.to.joint === end.joint) found.add(next);
      }
    }
    return [...found];
  }
}
