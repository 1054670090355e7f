"use client";

import { useRef, useState } from "react";
import { useFormContext } from "react-hook-form";
import { Button } from "@/components/button";
import { Field } from "@/components/field";
import { Select } from "@/components/inputs";
import { ProblemNotice } from "@/components/problem-notice";
import { ProgressLine } from "@/components/progress-line";
import { ApiProblem, callApi } from "@/features/http/api-client";
import type { Problem } from "@/features/http/problem";
import { type PreviewView, previewSchema } from "./builder-view";
import { PreviewTable } from "./preview-table";
import { type ScenarioForm, toDocument } from "./scenario-form";
import { Section } from "./section";

const sizes = [2, 4, 6, 8] as const;

export interface PreviewSectionProps {
  readonly scenarioId: string;
  /** Marks the fields that are not right; answers whether the form is complete. */
  readonly validate: () => Promise<boolean>;
}

/** Draws variants one after the other and shows them side by side, as they come. */
export function PreviewSection({ scenarioId, validate }: PreviewSectionProps) {
  const { getValues } = useFormContext<ScenarioForm>();
  const [wanted, setWanted] = useState<number>(4);
  const [drawn, setDrawn] = useState<readonly PreviewView[]>([]);
  const [total, setTotal] = useState<number>();
  const [problem, setProblem] = useState<Problem>();
  const stop = useRef<AbortController>(undefined);
  const draw = async () => {
    setProblem(undefined);
    if (!(await validate())) {
      setProblem({
        type: "/problems/invalid_input",
        status: 400,
        code: "invalid_input",
        title: "The scenario is not complete yet",
        detail: "What is missing is listed above and stands beside its field.",
      });
      return;
    }
    const controller = new AbortController();
    stop.current = controller;
    const document = toDocument(getValues());
    const run = crypto.getRandomValues(new Uint32Array(1))[0]?.toString(36) ?? "0";
    setDrawn([]);
    setTotal(wanted);
    try {
      for (let index = 1; index <= wanted; index++) {
        const preview = await callApi(`/api/scenarios/${scenarioId}/preview`, {
          method: "POST",
          body: { document, seed: `preview-${run}-${index}` },
          answer: previewSchema,
          signal: controller.signal,
        });
        setDrawn((before) => [...before, preview]);
      }
    } catch (error) {
      if (error instanceof ApiProblem) setProblem(error.problem);
      else if (!(error instanceof DOMException && error.name === "AbortError")) throw error;
    } finally {
      setTotal(undefined);
    }
  };
  return (
    <Section
      id="builder-preview"
      title="Preview"
      lead="What learners will meet: a few variants as the draw makes them, each simulated in the system's standard conditions."
    >
      <div className="flex flex-wrap items-end gap-4">
        <Field label="Variants">
          <Select
            value={wanted}
            onChange={(event) => setWanted(Number(event.target.value))}
            className="max-w-28"
          >
            {sizes.map((size) => (
              <option key={size} value={size}>
                {size}
              </option>
            ))}
          </Select>
        </Field>
        <Button kind="primary" busy={total !== undefined} onClick={() => void draw()}>
          {drawn.length === 0 ? "Draw variants" : "Draw others"}
        </Button>
        {total !== undefined && <Button onClick={() => stop.current?.abort()}>Stop</Button>}
      </div>
      <div aria-live="polite">
        {total !== undefined && (
          <ProgressLine
            label="Simulating the variants"
            fraction={drawn.length / total}
            valueText={`${drawn.length} of ${total}`}
          />
        )}
      </div>
      {problem !== undefined && <ProblemNotice problem={problem} />}
      {drawn.length > 0 && <PreviewTable previews={drawn} />}
    </Section>
  );
}
