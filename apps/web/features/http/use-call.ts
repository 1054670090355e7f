"use client";

import { useCallback, useState } from "react";
import { ApiProblem } from "./api-client";
import type { Problem } from "./problem";

/** One request at a time with its busy state and its refusal in words. A bug of ours still throws. */
export function useCall() {
  const [busy, setBusy] = useState(false);
  const [problem, setProblem] = useState<Problem>();
  /** Answers whether the work went through. */
  const run = useCallback(async (work: () => Promise<void>): Promise<boolean> => {
    setBusy(true);
    setProblem(undefined);
    try {
      await work();
      return true;
    } catch (error) {
      if (!(error instanceof ApiProblem)) throw error;
      setProblem(error.problem);
      return false;
    } finally {
      setBusy(false);
    }
  }, []);
  const clear = useCallback(() => setProblem(undefined), []);
  return { busy, problem, run, clear };
}
