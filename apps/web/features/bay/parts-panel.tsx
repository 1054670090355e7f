"use client";

import type { Command, LearnerView } from "@probeworthy/evaluation";
import { type ReactNode, useState } from "react";
import { Button } from "@/components/button";
import { Caution } from "@/components/caution";
import { Dialog, DialogClose } from "@/components/dialog";
import type { ServiceView } from "@/features/service-information/service-view";
import { NoticeLine } from "./notice-line";
import type { Notice } from "./use-attempt";

export interface PartsPanelProps {
  readonly view: LearnerView;
  readonly service: ServiceView;
  readonly notice: Notice | undefined;
  readonly send: (command: Command) => void;
  /** The drawn face of a connector, or nothing when there is no drawing. */
  readonly renderFace: (connector: string) => ReactNode;
}

interface Asked {
  readonly command: Command;
  readonly title: string;
  readonly confirm: string;
  readonly cautions: readonly string[];
}

/** Connectors with their faces and pin tables, and the fuses: where things come apart and go together again. */
export function PartsPanel({ view, service, notice, send, renderFace }: PartsPanelProps) {
  const [asked, setAsked] = useState<Asked>();
  const [open, setOpen] = useState(service.connectors[0]?.id);
  const act = (next: Asked) => (next.cautions.length === 0 ? send(next.command) : setAsked(next));
  const shown = service.connectors.find((connector) => connector.id === open);
  return (
    <div className="space-y-8">
      <section aria-labelledby="parts-fuses">
        <h2 id="parts-fuses" className="mb-2">
          Fuses
        </h2>
        <ul className="grid gap-x-8 sm:grid-cols-2">
          {service.fuses.map((fuse) => (
            <li
              key={fuse.id}
              className="flex flex-wrap items-center justify-between gap-2 border-b border-hairline py-1.5"
            >
              <span className="min-w-0">
                <code className="font-semibold">{fuse.id}</code> {fuse.title}, {fuse.ratingAmps} A
                {fuse.place !== null && <span className="block text-sm text-ink-soft">{fuse.place}</span>}
              </span>
              {view.bench.pulledFuses.includes(fuse.id) ? (
                <Button onClick={() => send({ type: "fitFuse", fuse: fuse.id, fresh: false })}>
                  Put {fuse.id} back
                </Button>
              ) : (
                <Button
                  onClick={() =>
                    act({
                      command: { type: "pullFuse", fuse: fuse.id },
                      title: `Pull fuse ${fuse.id}?`,
                      confirm: `Pull ${fuse.id}`,
                      cautions: fuse.cautions,
                    })
                  }
                >
                  Pull {fuse.id}
                </Button>
              )}
            </li>
          ))}
        </ul>
        <NoticeLine notice={notice} about={["pullFuse", "fitFuse"]} />
      </section>
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
              onUnplug={() =>
                act({
                  command: { type: "unplug", connector: shown.id },
                  title: `Unplug ${shown.id}?`,
                  confirm: `Unplug ${shown.id}`,
                  cautions: shown.cautions,
                })
              }
              notice={<NoticeLine notice={notice} about={["unplug", "plug"]} />}
            />
          )}
        </div>
      </section>
      <Dialog
        title={asked?.title ?? ""}
        description="At a real car, do this first:"
        open={asked !== undefined}
        onOpenChange={(isOpen) => !isOpen && setAsked(undefined)}
        actions={
          <>
            <DialogClose>
              <Button>Leave it</Button>
            </DialogClose>
            <Button
              kind="primary"
              onClick={() => {
                if (asked !== undefined) send(asked.command);
                setAsked(undefined);
              }}
            >
              {asked?.confirm}
            </Button>
          </>
        }
      >
        <Caution>
          {asked?.cautions.map((text) => (
            <p key={text}>{text}</p>
          ))}
        </Caution>
      </Dialog>
    </div>
  );
}

interface ConnectorSheetProps {
  readonly connector: ServiceView["connectors"][number];
  readonly unplugged: boolean;
  readonly face: ReactNode;
  readonly notice: ReactNode;
  readonly onPlug: () => void;
  readonly onUnplug: () => void;
}

function ConnectorSheet({ connector, unplugged, face, notice, onPlug, onUnplug }: ConnectorSheetProps) {
  return (
    <div className="min-w-0 space-y-3">
      <div className="flex flex-wrap items-start justify-between gap-3">
        <div>
          <h3>
            {connector.id} {connector.title}
          </h3>
          <p className="text-sm text-ink-soft">
            {[connector.place, connector.housing, unplugged ? "unplugged" : "plugged in"]
              .filter(Boolean)
              .join(" · ")}
          </p>
        </div>
        {unplugged ? (
          <Button onClick={onPlug}>Plug {connector.id} back</Button>
        ) : (
          <Button onClick={onUnplug}>Unplug {connector.id}</Button>
        )}
      </div>
      {notice}
      {face}
      <div className="overflow-x-auto">
        <table className="w-full text-left text-sm">
          <caption className="sr-only">Cavities of {connector.id}</caption>
          <thead className="border-b border-ink">
            <tr>
              <th scope="col" className="py-1 pr-3">
                Cavity
              </th>
              <th scope="col" className="py-1 pr-3">
                Function
              </th>
              <th scope="col" className="py-1">
                Conductor
              </th>
            </tr>
          </thead>
          <tbody>
            {connector.cavities.map((cavity) => (
              <tr key={cavity.cavity} className="border-b border-hairline">
                <td className="py-1 pr-3 font-mono">{cavity.cavity}</td>
                <td className="py-1 pr-3">{cavity.function ?? cavity.terminal ?? "free"}</td>
                <td className="py-1 font-mono">
                  {cavity.conductor === null
                    ? "–"
                    : `${cavity.conductor} ${cavity.colour} ${cavity.squareMillimetres} mm²`}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </div>
  );
}
