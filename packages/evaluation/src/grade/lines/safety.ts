import type { World } from "../../event";
import { type Attempted, linesOf, measured, type Reason, type Scored, score } from "./line";

/** What each breach costs, and the most that breaches of its kind cost together. Shares of the line. */
const breaches: readonly {
  readonly remark: World["remarks"][number];
  readonly each: number;
  readonly atMost: number;
  readonly text: string;
}[] = [
  {
    remark: "amps_across_supply",
    each: 0.5,
    atMost: 0.7,
    text: "The 10 A input was put straight across the supply.",
  },
  {
    remark: "meter_fuse_blown",
    each: 0.2,
    atMost: 0.4,
    text: "The meter's fuse was blown: more current than the 10 A input carries.",
  },
  {
    remark: "unplugged_live",
    each: 0.2,
    atMost: 0.4,
    text: "A control module was unplugged or plugged in while its supply was on. Switch off first.",
  },
  {
    remark: "parted_under_load",
    each: 0.2,
    atMost: 0.4,
    text: "A contact was parted or joined while its circuit draws current: it arcs. Switch off first.",
  },
  {
    remark: "ohms_on_live_circuit",
    each: 0.1,
    atMost: 0.3,
    text: "Ohms was measured on a live circuit.",
  },
];

/** A fuse that blows again tells of a short; feeding it a third one is careless. */
const fusesAllowed = 1;

/** Safety: full, less what each breach costs. Without a single measurement there is nothing to judge. */
export function scoreSafety({ events }: Attempted): Scored {
  if (!measured(events)) {
    return score(0, [{ text: "Nothing was measured: there is nothing to judge.", effect: 0, lines: [] }]);
  }
  const reasons: Reason[] = [];
  for (const { remark, each, atMost, text } of breaches) {
    const lines = linesOf(events.filter(({ world }) => world.remarks.includes(remark)));
    if (lines.length > 0) reasons.push({ text, effect: -Math.min(atMost, each * lines.length), lines });
  }
  const blown = events.filter(
    ({ world, command }) => world.remarks.includes("fuse_blew") && command.type !== "open",
  );
  if (blown.length > fusesAllowed) {
    reasons.push({
      text: "Fuses were fed to a short. Find it with the fuse out.",
      effect: -0.2,
      lines: linesOf(blown),
    });
  }
  if (reasons.length === 0) return score(1, [{ text: "No unsafe step.", effect: 1, lines: [] }]);
  return score(
    reasons.reduce((sum, { effect }) => sum + effect, 1),
    reasons,
  );
}
