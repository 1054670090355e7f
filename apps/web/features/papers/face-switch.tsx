"use client";

import type { ConnectorFace } from "@probeworthy/diagram";
import { useState } from "react";
import { z } from "zod";
import { Segmented } from "@/features/bay/segmented";
import { ConnectorFaceView, type ConnectorFaceViewProps } from "@/features/diagram/connector-face-view";
import { PaperState } from "./paper-state";
import { usePaper } from "./use-paper";

const face = z.custom<ConnectorFace>(
  (value) => typeof value === "object" && value !== null && "cavities" in value,
);
export const facesSchema = z.object({ wire: face, terminal: face });

export interface FaceSwitchProps extends Pick<ConnectorFaceViewProps, "points" | "leads" | "onPoint"> {
  readonly papers: string;
  readonly connector: string;
  /** Whether its mating side can be seen now; a connector that is together shows only where its conductors go in. */
  readonly isApart?: boolean;
}

type Side = "wire" | "terminal";

/** A connector seen from the wire side or from the terminal side. */
export function FaceSwitch({ papers, connector, isApart = true, ...shared }: FaceSwitchProps) {
  const [chosen, setChosen] = useState<Side>("wire");
  const paper = usePaper(`${papers}/faces/${encodeURIComponent(connector)}`, facesSchema);
  if (paper.kind !== "ready") return <PaperState paper={paper} words="The connector is being drawn" />;
  const side = isApart ? chosen : "wire";
  return (
    <div className="space-y-3">
      <div className="max-w-md">
        <Segmented
          label={`${connector} seen from`}
          value={side}
          options={[
            { value: "wire", label: "Wire side" },
            { value: "terminal", label: "Terminal side", disabled: !isApart },
          ]}
          onChoose={(next) => setChosen(next === "terminal" ? "terminal" : "wire")}
        />
        {!isApart && <p className="text-sm text-ink-soft">Unplug it to see its terminal side.</p>}
      </div>
      <ConnectorFaceView face={paper.value[side]} {...shared} />
    </div>
  );
}
