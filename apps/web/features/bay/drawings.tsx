"use client";

import type { ConnectorFace, Sheet } from "@probeworthy/diagram";
import type { LearnerView } from "@probeworthy/evaluation";
import { WiringDiagram } from "@/features/diagram/wiring-diagram";
import type { Lead } from "./lead-controls";

/** The drawn papers of the system: plain geometry, nothing of the job. */
export interface Drawings {
  readonly sheet: Sheet;
  readonly faces: readonly { readonly wire: ConnectorFace; readonly terminal: ConnectorFace }[];
}

export interface DrawnProps {
  readonly drawings: Drawings;
  readonly view: LearnerView;
  readonly armed: Lead;
  readonly onPoint: (point: string) => void;
}

export interface DrawnDiagramProps extends DrawnProps {
  readonly onConnector: (connector: string) => void;
  readonly onFuse: (fuse: string) => void;
}

export function DrawnDiagram({ drawings, view, armed, onPoint, onConnector, onFuse }: DrawnDiagramProps) {
  const { red, black, unplugged, pulledFuses } = view.bench;
  return (
    <WiringDiagram
      sheet={drawings.sheet}
      points={view.points}
      leads={{ red: red ?? undefined, black: black ?? undefined }}
      unplugged={unplugged}
      pulledFuses={pulledFuses}
      onPoint={onPoint}
      onConnector={onConnector}
      onFuse={onFuse}
      hint={`The ${armed} lead is in hand`}
    />
  );
}

export function DrawnFace(_props: DrawnProps & { readonly connector: string }) {
  return null;
}
