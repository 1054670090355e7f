"use client";

import type { Command, LearnerView } from "@probeworthy/evaluation";
import { type MeterFunction, meterFunctions } from "@probeworthy/instruments";
import type { RefObject } from "react";
import { Button } from "@/components/button";
import { type Lead, LeadControls } from "./lead-controls";
import type { Names } from "./names";
import { NoticeLine } from "./notice-line";
import { ReadingSlip } from "./reading-slip";
import { functionSigns, functionTitles } from "./reading-words";
import { Segmented } from "./segmented";
import { TakeReading } from "./take-reading";
import type { Notice } from "./use-attempt";

export interface MeterPanelProps {
  readonly view: LearnerView;
  readonly names: Names;
  readonly notice: Notice | undefined;
  readonly pending: Command["type"] | undefined;
  readonly armed: Lead;
  readonly onArm: (lead: Lead) => void;
  readonly send: (command: Command) => void;
  readonly takeButton: RefObject<HTMLButtonElement | null>;
}

/** The multimeter: slip on top, what it is set to, which lead is in the hand, and the button that reads. */
export function MeterPanel(props: MeterPanelProps) {
  const { view, names, notice, pending, armed, onArm, send, takeButton } = props;
  const blown = view.slip?.reading.state === "fuse_open";
  return (
    <section aria-label="Multimeter" className="space-y-3">
      <ReadingSlip view={view} names={names} busy={pending === "takeReading"} />
      <Segmented
        label="Meter function"
        labelHidden
        value={view.bench.function}
        options={meterFunctions.map((name) => ({
          value: name,
          label: <FunctionLabel name={name} />,
          disabled: !view.instruments.includes(name),
        }))}
        onChoose={(value) => {
          const chosen = meterFunctions.find((name) => name === value);
          if (chosen !== undefined) send({ type: "selectFunction", function: chosen });
        }}
      />
      <NoticeLine notice={notice} about={["selectFunction"]} />
      <LeadControls
        bench={view.bench}
        names={names}
        armed={armed}
        onArm={onArm}
        onLift={(lead) => send({ type: "liftLead", lead })}
      />
      <NoticeLine notice={notice} about={["placeLead", "liftLead"]} />
      <TakeReading
        required={view.requirePrediction}
        busy={pending === "takeReading"}
        buttonRef={takeButton}
        onTake={(prediction) =>
          send({ type: "takeReading", ...(prediction === undefined ? {} : { prediction }) })
        }
        readingCount={view.log.filter((line) => line.command.type === "takeReading").length}
      />
      <NoticeLine notice={notice} about={["takeReading", "replaceMeterFuse"]} />
      {blown && <Button onClick={() => send({ type: "replaceMeterFuse" })}>Replace the meter's fuse</Button>}
    </section>
  );
}

function FunctionLabel({ name }: { readonly name: MeterFunction }) {
  return (
    <>
      <span className="font-mono" aria-hidden="true">
        {functionSigns[name]}
      </span>
      <span className="sr-only">{functionTitles[name]}</span>
    </>
  );
}
