"use client";

import { useState } from "react";
import { FaceSwitch } from "@/features/papers/face-switch";
import { CavityTable } from "./cavity-table";
import type { ServiceConnector } from "./service-view";

const noLeads = {};

/** The connectors of a system: one is chosen, seen from either side, with what each cavity is for. */
export function ConnectorFaces({
  papers,
  connectors,
}: {
  readonly papers: string;
  readonly connectors: readonly ServiceConnector[];
}) {
  const [chosen, setChosen] = useState(connectors[0]?.id);
  const connector = connectors.find(({ id }) => id === chosen) ?? connectors[0];
  if (connector === undefined) return <p>This system has no connector of its own.</p>;
  return (
    <div className="space-y-3">
      <label className="block max-w-md">
        <span className="label-small block">Connector</span>
        <select
          value={connector.id}
          onChange={(event) => setChosen(event.target.value)}
          className="min-h-11 w-full rounded-sheet border border-edge bg-paper px-3 hover:border-ink"
        >
          {connectors.map(({ id, title }) => (
            <option key={id} value={id}>
              {id} {title}
            </option>
          ))}
        </select>
      </label>
      <p className="text-sm text-ink-soft">
        {[connector.place, connector.housing].filter(Boolean).join(" · ")}
      </p>
      <div className="grid items-start gap-6 lg:grid-cols-2">
        <FaceSwitch
          key={connector.id}
          papers={papers}
          connector={connector.id}
          points={connector.cavities.flatMap(({ cavity, function: use }) =>
            ["h", "c", "b"].map((face) => ({
              id: `${connector.id}.${cavity}:${face}`,
              title: use ?? `cavity ${cavity}`,
              accessible: true,
            })),
          )}
          leads={noLeads}
        />
        <CavityTable connector={connector} />
      </div>
    </div>
  );
}
