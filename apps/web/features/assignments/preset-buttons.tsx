"use client";

import { type RubricPreset, rubricPresetNames, rubricPresets } from "@probeworthy/evaluation";
import { Button } from "@/components/button";
import { presetWords } from "@/features/wording/terms";

export interface PresetButtonsProps {
  readonly onChoose: (preset: RubricPreset) => void;
}

/** Fills in usual weights and pass marks; each number can be changed afterwards. */
export function PresetButtons({ onChoose }: PresetButtonsProps) {
  return (
    <fieldset>
      <legend className="font-semibold">Start from usual weights and pass mark</legend>
      <div className="mt-2 flex flex-wrap gap-3">
        {rubricPresetNames.map((name) => (
          <Button key={name} onClick={() => onChoose(rubricPresets[name])}>
            {presetWords[name]}
          </Button>
        ))}
      </div>
    </fieldset>
  );
}
