import type { AttemptEvent } from "../../event";
import { tellsOfTheCar } from "../observe-again";
import { linesOf, type Reason } from "./line";

/** What an invalid test costs of the method, and the most they cost together. */
const each = 0.1;
const atMost = 0.3;

/**
 * Tests that cannot prove anything, whatever was concluded from them: a wrong conclusion costs the cause, an invalid
 * test costs the method. One reason for each way of being invalid.
 */
export function invalidTests(events: readonly AttemptEvent[]): Reason[] {
  const nonsense = events.filter(
    ({ observation, world }) => observation.kind === "reading" && !tellsOfTheCar(observation, world.remarks),
  );
  const onLive = nonsense.filter(({ world }) => world.remarks.includes("ohms_on_live_circuit"));
  const ways: readonly (readonly [string, readonly AttemptEvent[]])[] = [
    ["A reading that means nothing: ohms or continuity on a circuit, or a bus, with voltage on it.", onLive],
    [
      "A reading that means nothing: the meter's own fuse was open.",
      nonsense.filter((event) => !onLive.includes(event)),
    ],
    ["Codes were cleared before they were read: what they told is gone.", clearedUnread(events)],
    ["What was wrong went away while something was apart: the test erased it.", erased(events)],
  ];
  let left = atMost;
  return ways
    .filter(([, found]) => found.length > 0)
    .map(([text, found]) => {
      const cost = Math.min(left, each * found.length);
      left -= cost;
      return { text, effect: -cost, lines: linesOf(found) };
    });
}

function clearedUnread(events: readonly AttemptEvent[]): AttemptEvent[] {
  const read = new Set<string>();
  return events.filter(({ command }) => {
    if (command.type === "readCodes") read.add(command.module);
    return command.type === "clearCodes" && !read.has(command.module);
  });
}

/**
 * Partings after which, everything joined again in the same condition, something noticed before is gone: a latched
 * state lost its memory. A fresh fuse is a repair and does not count.
 */
function erased(events: readonly AttemptEvent[]): AttemptEvent[] {
  const found: AttemptEvent[] = [];
  const whole = new Map<string, ReadonlySet<string>>();
  let parted: AttemptEvent | null = null;
  for (const event of events) {
    const { command, observation } = event;
    if (command.type === "wait") parted = null; // time alone may end it
    if (command.type === "fitFuse" && command.fresh) {
      parted = null;
      whole.clear();
    }
    if (!("items" in observation)) continue;
    const { conditions, unplugged, pulledFuses } = observation.context;
    if (unplugged.length + pulledFuses.length > 0) {
      parted ??= event;
      continue;
    }
    const key = JSON.stringify(conditions);
    const now = new Set(observation.items.map(({ id, text }) => `${id} ${text}`));
    const before = whole.get(key);
    if (parted !== null && before !== undefined && [...before].some((item) => !now.has(item))) {
      found.push(parted);
    }
    parted = null;
    whole.set(key, now);
  }
  return found;
}
