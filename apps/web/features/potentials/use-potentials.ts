"use client";

import { useEffect, useState } from "react";
import { ApiProblem, callApi } from "@/features/http/api-client";
import type { Problem } from "@/features/http/problem";
import { type Potentials, type PotentialsInput, potentialsSchema } from "./potentials-view";

export interface Worked {
  /** The newest answer there is, and the sheet it belongs to; it stays until the next one has come. */
  readonly value: Potentials | undefined;
  readonly system: string | undefined;
  readonly isBusy: boolean;
  readonly problem: Problem | undefined;
}

const pauseMilliseconds = 150;

/** Potentials for what is set now; asked for again a moment after it changes. `undefined` asks for nothing. */
export function usePotentials(papers: string, input: PotentialsInput | undefined): Worked {
  const [worked, setWorked] = useState<Worked>({
    value: undefined,
    system: undefined,
    isBusy: false,
    problem: undefined,
  });
  const asked = input === undefined ? undefined : JSON.stringify(input);
  useEffect(() => {
    if (asked === undefined) return;
    const stop = new AbortController();
    const ask = async () => {
      setWorked((before) => ({ ...before, isBusy: true }));
      const body = JSON.parse(asked) as PotentialsInput;
      try {
        const value = await callApi(`${papers}/potentials`, {
          method: "POST",
          body,
          answer: potentialsSchema,
          signal: stop.signal,
        });
        setWorked({ value, system: body.system, isBusy: false, problem: undefined });
      } catch (error) {
        if (stop.signal.aborted) return;
        if (!(error instanceof ApiProblem)) throw error;
        const { problem } = error;
        setWorked((before) => ({ ...before, isBusy: false, problem }));
      }
    };
    const timer = setTimeout(() => void ask(), pauseMilliseconds);
    return () => {
      clearTimeout(timer);
      stop.abort();
    };
  }, [papers, asked]);
  return worked;
}
