"use client";

import type { Sheet } from "@probeworthy/diagram";
import { useEffect, useState } from "react";
import { z } from "zod";
import { ApiProblem, callApi } from "@/features/http/api-client";
import type { Problem } from "@/features/http/problem";

/** Geometry laid out by our own server: its shape is a type, checked here only for being one. */
export const sheetAnswerSchema = z.object({
  sheet: z.custom<Sheet>((value) => typeof value === "object" && value !== null && "symbols" in value),
});

export type Paper<Value> =
  | { readonly kind: "loading" }
  | { readonly kind: "ready"; readonly value: Value }
  | { readonly kind: "failed"; readonly problem: Problem; readonly retry: () => void };

// Papers belong to a version and never change, so one that was fetched stays good for as long as the page is open.
const fetched = new Map<string, Promise<unknown>>();

async function fetchPaper<S extends z.ZodType>(address: string, answer: S): Promise<z.output<S>> {
  const known = fetched.get(address);
  if (known !== undefined) return known as Promise<z.output<S>>;
  const asked = callApi(address, { method: "GET", answer });
  fetched.set(address, asked);
  asked.catch(() => fetched.delete(address));
  return asked;
}

/** One paper by its address, fetched when it is first looked at. Hand in the same schema object every time. */
export function usePaper<S extends z.ZodType>(address: string, schema: S): Paper<z.output<S>> {
  const [paper, setPaper] = useState<{ address: string; paper: Paper<z.output<S>> }>();
  const [tries, setTries] = useState(0);
  useEffect(() => {
    let isOver = false;
    const show = (next: Paper<z.output<S>>) => {
      if (!isOver) setPaper({ address, paper: next });
    };
    const ask = async () => {
      try {
        show({ kind: "ready", value: await fetchPaper(address, schema) });
      } catch (error) {
        if (!(error instanceof ApiProblem)) throw error;
        const retry = () => {
          setPaper(undefined);
          setTries((count) => count + 1);
        };
        show({ kind: "failed", problem: error.problem, retry });
      }
    };
    void ask();
    return () => {
      isOver = true;
    };
  }, [address, schema, tries]);
  return paper?.address === address ? paper.paper : { kind: "loading" };
}
