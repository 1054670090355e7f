"use client";

import type { Command } from "@probeworthy/evaluation";
import { useState } from "react";
import { Button } from "@/components/button";
import { Field } from "@/components/field";
import { Select } from "@/components/inputs";
import { formatShopTime } from "./log-words";
import { NoticeLine } from "./notice-line";
import { PanelHeading } from "./panel-heading";
import type { Notice } from "./use-attempt";

const choices = [30, 60, 300, 600, 1200, 1800];

export interface StandingTimeProps {
  readonly notice: Notice | undefined;
  readonly send: (command: Command) => void;
}

/** Lets shop time pass: things cool down, timers run out. */
export function StandingTime({ notice, send }: StandingTimeProps) {
  const [seconds, setSeconds] = useState(300);
  return (
    <section aria-labelledby="car-stand">
      <PanelHeading id="car-stand">Let it stand</PanelHeading>
      <div className="flex items-end gap-2">
        <Field label="For" className="flex-1">
          <Select value={seconds} onChange={(event) => setSeconds(Number(event.target.value))}>
            {choices.map((choice) => (
              <option key={choice} value={choice}>
                {formatShopTime(choice)}
              </option>
            ))}
          </Select>
        </Field>
        <Button onClick={() => send({ type: "wait", seconds })}>Wait</Button>
      </div>
      <p className="mt-1 text-sm text-ink-soft">Costs that much shop time.</p>
      <NoticeLine notice={notice} about={["wait"]} />
    </section>
  );
}
