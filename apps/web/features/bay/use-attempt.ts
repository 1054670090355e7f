"use client";

import type { Command, LearnerView } from "@probeworthy/evaluation";
import { useCallback, useRef, useState } from "react";
import { type CommandOutcome, sendCommand } from "./attempt-client";

export interface Notice {
  /** Which command it is about: the notice is shown beside what was clicked. */
  readonly about: Command["type"];
  readonly title: string;
  readonly text: string;
  readonly unreachable: boolean;
}

export interface AttemptControl {
  readonly view: LearnerView;
  /** Type of the command under way. */
  readonly pending: Command["type"] | undefined;
  readonly notice: Notice | undefined;
  /** For the live region; the count makes the same words twice two announcements. */
  readonly announcement: { readonly text: string; readonly count: number };
  /** Resolves to the new view, or to undefined when nothing was done. */
  readonly send: (command: Command) => Promise<LearnerView | undefined>;
  readonly retry: () => void;
  readonly dismiss: () => void;
}

type Announce = (command: Command, view: LearnerView) => string;

/**
 * One attempt in the browser. Commands are sent one after the other; when one is not carried out the ones waiting
 * behind it are dropped, because they were meant for a bench that did not come about.
 */
export function useAttempt(attemptId: string, initial: LearnerView, announce: Announce): AttemptControl {
  const [view, setView] = useState(initial);
  const [pending, setPending] = useState<Command["type"]>();
  const [notice, setNotice] = useState<Notice>();
  const [announcement, setAnnouncement] = useState({ text: "", count: 0 });
  const latest = useRef(initial);
  const chain = useRef<Promise<boolean>>(Promise.resolve(true));
  const waiting = useRef(0);
  const unsent = useRef<{ command: Command; expectedSequence: number }>(undefined);

  const say = useCallback(
    (text: string) => setAnnouncement((previous) => ({ text, count: previous.count + 1 })),
    [],
  );

  const settle = useCallback(
    (command: Command, expectedSequence: number, outcome: CommandOutcome): LearnerView | undefined => {
      if (outcome.kind === "done" || outcome.kind === "stale") {
        latest.current = outcome.view;
        setView(outcome.view);
      }
      unsent.current = outcome.kind === "unreachable" ? { command, expectedSequence } : undefined;
      if (outcome.kind === "done") {
        setNotice(undefined);
        say(announce(command, outcome.view));
        return outcome.view;
      }
      const next = noticeFor(command, outcome);
      setNotice(next);
      say(`${next.title}. ${next.text}`);
      return undefined;
    },
    [announce, say],
  );

  const run = useCallback(
    (command: Command, sequence: () => number): Promise<LearnerView | undefined> => {
      waiting.current += 1;
      let result: LearnerView | undefined;
      const attempt = chain.current.then(async (previousDone) => {
        if (!previousDone) return false;
        setPending(command.type);
        const expectedSequence = sequence();
        result = settle(
          command,
          expectedSequence,
          await sendCommand({ attemptId, expectedSequence, command }),
        );
        return result !== undefined;
      });
      chain.current = attempt.finally(() => {
        waiting.current -= 1;
        if (waiting.current === 0) {
          setPending(undefined);
          chain.current = Promise.resolve(true);
        }
      });
      return chain.current.then(() => result);
    },
    [attemptId, settle],
  );

  const send = useCallback((command: Command) => run(command, () => latest.current.sequence), [run]);
  const retry = useCallback(() => {
    const again = unsent.current;
    if (again !== undefined) void run(again.command, () => again.expectedSequence);
  }, [run]);
  const dismiss = useCallback(() => setNotice(undefined), []);

  return { view, pending, notice, announcement, send, retry, dismiss };
}

function noticeFor(command: Command, outcome: Exclude<CommandOutcome, { kind: "done" }>): Notice {
  if (outcome.kind === "unreachable") {
    return {
      about: command.type,
      title: "The server did not answer",
      text: "Your last step may not have been recorded. Try again: it counts only once.",
      unreachable: true,
    };
  }
  if (outcome.kind === "stale") {
    return {
      about: command.type,
      title: "The job went on somewhere else",
      text: "Another window recorded a step first. This page now shows it; nothing of yours was done. Repeat the step if you still want it.",
      unreachable: false,
    };
  }
  return {
    about: command.type,
    title: outcome.problem.status === 422 ? "Not done" : outcome.problem.title,
    text: [outcome.problem.detail ?? "", ...(outcome.problem.errors ?? []).map((error) => error.message)]
      .join(" ")
      .trim(),
    unreachable: false,
  };
}
