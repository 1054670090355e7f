"use client";

import type { Sheet } from "@probeworthy/diagram";
import { useEffect, useState } from "react";
import { ApiProblem, callApi } from "@/features/http/api-client";
import { draftDrawingSchema } from "../authoring-view";
import type { Draft } from "../fields/new-record";

export interface Drawing {
  /** The newest drawing there is; it stays until the next one has come. */
  readonly sheet: Sheet | undefined;
  readonly isBusy: boolean;
  /** Why the draft as it stands cannot be drawn. */
  readonly reason: string | undefined;
}

const pauseMilliseconds = 500;

/** The drawing of a system of the draft, asked for again a moment after the work pauses. */
export function useDrawing(vehicleId: string, draft: Draft, systemId: string | undefined): Drawing {
  const [drawing, setDrawing] = useState<Drawing & { systemId?: string }>({
    sheet: undefined,
    isBusy: false,
    reason: undefined,
  });
  useEffect(() => {
    if (systemId === undefined) return;
    const stop = new AbortController();
    const draw = async () => {
      setDrawing((before) => ({ ...before, isBusy: true }));
      try {
        const answer = await callApi(`/api/vehicles/${vehicleId}/drawing`, {
          method: "POST",
          body: { document: draft, systemId },
          answer: draftDrawingSchema,
          signal: stop.signal,
        });
        setDrawing((before) => {
          // Laid out by our own server for this very draft.
          if (answer.drawn)
            return { sheet: answer.sheet as unknown as Sheet, isBusy: false, reason: undefined, systemId };
          const sheet = before.systemId === systemId ? before.sheet : undefined;
          return { sheet, isBusy: false, reason: answer.reason, systemId };
        });
      } catch (error) {
        if (stop.signal.aborted) return;
        if (!(error instanceof ApiProblem)) throw error;
        setDrawing((before) => ({ ...before, isBusy: false, reason: error.message }));
      }
    };
    const timer = setTimeout(() => void draw(), pauseMilliseconds);
    return () => {
      clearTimeout(timer);
      stop.abort();
    };
  }, [vehicleId, draft, systemId]);
  return systemId === undefined ? { sheet: undefined, isBusy: false, reason: undefined } : drawing;
}
