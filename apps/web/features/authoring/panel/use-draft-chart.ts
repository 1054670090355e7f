"use client";

import { useEffect, useState } from "react";
import { ApiProblem, callApi } from "@/features/http/api-client";
import { type DraftChart, draftChartSchema } from "../authoring-view";
import type { Draft } from "../fields/new-record";

const pauseMilliseconds = 700;

/** Measures the chart on the draft a moment after the work pauses; the last values stay until the next are there. */
export function useDraftChart(
  vehicleId: string,
  draft: Draft,
  systemId: string | undefined,
  csv: string | null,
): { readonly chart: DraftChart | undefined; readonly isBusy: boolean } {
  const [state, setState] = useState<{ chart?: DraftChart; isBusy: boolean }>({ isBusy: false });
  useEffect(() => {
    if (systemId === undefined) return;
    const stop = new AbortController();
    const measure = async () => {
      setState((before) => ({ ...before, isBusy: true }));
      try {
        const chart = await callApi(`/api/vehicles/${vehicleId}/draft-chart`, {
          method: "POST",
          body: { document: draft, systemId, csv },
          answer: draftChartSchema,
          signal: stop.signal,
        });
        setState({ chart, isBusy: false });
      } catch (error) {
        if (stop.signal.aborted) return;
        if (!(error instanceof ApiProblem)) throw error;
        setState({ chart: { computed: false, reason: error.message, errors: [] }, isBusy: false });
      }
    };
    const timer = setTimeout(() => void measure(), pauseMilliseconds);
    return () => {
      clearTimeout(timer);
      stop.abort();
    };
  }, [vehicleId, draft, systemId, csv]);
  return { chart: state.chart, isBusy: state.isBusy };
}
