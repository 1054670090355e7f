"use client";

import type { Command, LearnerView } from "@probeworthy/evaluation";
import { type ReactNode, useState } from "react";
import { Button } from "@/components/button";
import type { ServiceView } from "@/features/service-information/service-view";
import { ConnectorSheet } from "./connector-sheet";
import { NoticeLine } from "./notice-line";
import { type Asked, askConnector, askFuse } from "./parting-dialog";
import type { Notice } from "./use-attempt";

export interface PartsPanelProps {
  readonly view: LearnerView;
  readonly service: ServiceView;
  readonly notice: Notice | undefined;
  readonly send: (command: Command) => void;
  readonly ask: (asked: Asked) => void;
  /** The drawn face of a connector, or nothing when there is no drawing. */
  readonly renderFace: (connector: string) => ReactNode;
}

/** Connectors with their faces and pin tables, and the fuses: where things come apart and go together again. */
export function PartsPanel({ view, service, notice, send, ask, renderFace }: PartsPanelProps) {
  const [open, setOpen] = useState(service.connectors[0]?.id);
  // Without a caution to read there is nothing to ask here: the button has said what it does.
  const act = (next: Asked) => (next.cautions.length === 0 ? send(next.command) : ask(next));
  const shown = service.connectors.find((connector) => connector.id === open);
  return (
    <div className="space-y-8">
      <section aria-labelledby="parts-connectors">
        <h2 id="parts-connectors" className="mb-2">
          Connectors
        </h2>
        <div className="grid gap-4 lg:grid-cols-[15rem_1fr]">
          <ul className="max-h-[28rem] overflow-y-auto border border-hairline" aria-label="Connectors">
            {service.connectors.map((connector) => (
              <li key={connector.id}>
                <button
                  type="button"
                  aria-pressed={connector.id === open}
                  onClick={() => setOpen(connector.id)}
                  className="min-h-11 w-full cursor-pointer border-l-4 border-transparent px-2 py-1 text-left leading-tight hover:bg-panel aria-pressed:border-copper-fill aria-pressed:bg-panel"
                >
                  <code className="font-semibold">{connector.id}</code>{" "}
                  {view.bench.unplugged.includes(connector.id) && <strong>unplugged · </strong>}
                  {connector.title}
                </button>
              </li>
            ))}
          </ul>
          {shown !== undefined && (
            <ConnectorSheet
              connector={shown}
              unplugged={view.bench.unplugged.includes(shown.id)}
              face={renderFace(shown.id)}
              onPlug={() => send({ type: "plug", connector: shown.id })}
              onUnplug={() => act(askConnector(shown.id, view.bench, service))}
              notice={<NoticeLine notice={notice} about={["unplug", "plug"]} />}
            />
          )}
        </div>
      </section>
      <section aria-labelledby="parts-fuses">
        <h2 id="parts-fuses" className="mb-2">
          Fuses
        </h2>
        <ul className="grid gap-x-8 sm:grid-cols-2">
          {service.fuses.map((fuse) => (
            <li
              key={fuse.id}
              className="flex items-center justify-between gap-2 border-b border-hairline py-1.5"
            >
              <span className="min-w-0">
                <code className="font-semibold">{fuse.id}</code> {fuse.title}, {fuse.ratingAmps} A
                {fuse.place !== null && <span className="block text-sm text-ink-soft">{fuse.place}</span>}
              </span>
              {view.bench.pulledFuses.includes(fuse.id) ? (
                <Button
                  className="shrink-0"
                  onClick={() => send({ type: "fitFuse", fuse: fuse.id, fresh: false })}
                >
                  Put {fuse.id} back
                </Button>
              ) : (
                <Button className="shrink-0" onClick={() => act(askFuse(fuse.id, view.bench, service))}>
                  Pull {fuse.id}
                </Button>
              )}
            </li>
          ))}
        </ul>
        <NoticeLine notice={notice} about={["pullFuse", "fitFuse"]} />
      </section>
    </div>
  );
}
