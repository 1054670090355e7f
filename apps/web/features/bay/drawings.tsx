"use client";

import type { ConnectorFace, Sheet } from "@probeworthy/diagram";
import type { LearnerView } from "@probeworthy/evaluation";
import { use } from "react";
import { ConnectorFaceView } from "@/features/diagram/connector-face-view";
import { WiringDiagram } from "@/features/diagram/wiring-diagram";
import type { Lead } from "./lead-controls";

/** The drawn papers of the system: plain geometry, nothing of the job. */
export interface Drawings {
  readonly sheet: Sheet;
  readonly faces: readonly { readonly wire: ConnectorFace; readonly terminal: ConnectorFace }[];
}

export interface DrawnProps {
  readonly drawings: Promise<Drawings>;
  readonly view: LearnerView;
  readonly armed: Lead;
  readonly onPoint: (point: string) => void;
}

export interface DrawnDiagramProps extends DrawnProps {
  readonly onConnector: (connector: string) => void;
  readonly onFuse: (fuse: string) => void;
}

export function DrawnDiagram({ drawings, view, armed, onPoint, onConnector, onFuse }: DrawnDiagramProps) {
  const { sheet } = use(drawings);
  const { red, black, unplugged, pulledFuses } = view.bench;
  return (
    <WiringDiagram
      sheet={sheet}
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

/** The faces of a connector that can be reached now: from the wire side always, from the mating side once it is apart. */
export function DrawnFace({
  drawings,
  connector,
  view,
  onPoint,
}: Omit<DrawnProps, "armed"> & { readonly connector: string }) {
  const faces = use(drawings).faces.find(({ wire }) => wire.connector === connector);
  if (faces === undefined) return null;
  const { red, black, unplugged } = view.bench;
  const shared = {
    points: view.points,
    leads: { red: red ?? undefined, black: black ?? undefined },
    onPoint,
  };
  return (
    <div className="flex flex-wrap gap-x-8 gap-y-4">
      <figure>
        <figcaption className="label-small pb-1">Wire side</figcaption>
        <ConnectorFaceView face={faces.wire} {...shared} />
      </figure>
      {unplugged.includes(connector) && (
        <figure>
          <figcaption className="label-small pb-1">Mating side of the other half</figcaption>
          <ConnectorFaceView face={faces.terminal} {...shared} />
        </figure>
      )}
    </div>
  );
}

/** Where a drawing will be; everything else of the bay works meanwhile. */
export function DrawingPending() {
  return (
    <p
      role="status"
      className="flex min-h-96 items-center justify-center border border-dashed border-edge text-ink-soft"
    >
      The drawing is being laid out …
    </p>
  );
}
