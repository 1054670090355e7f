import type { Command, LearnerView } from "@probeworthy/evaluation";
import { Button } from "@/components/button";
import type { Names } from "./names";
import { NoticeLine } from "./notice-line";
import { PanelHeading } from "./panel-heading";
import type { Notice } from "./use-attempt";

export interface ApartListProps {
  readonly view: LearnerView;
  readonly names: Names;
  readonly notice: Notice | undefined;
  readonly send: (command: Command) => void;
}

/** What has been unplugged or pulled, each with one click to put it back. */
export function ApartList({ view, names, notice, send }: ApartListProps) {
  const { unplugged, pulledFuses } = view.bench;
  return (
    <section aria-labelledby="car-apart">
      <PanelHeading id="car-apart">Taken apart</PanelHeading>
      {unplugged.length + pulledFuses.length === 0 ? (
        <p className="text-ink-soft">Everything is plugged in and every fuse is in its holder.</p>
      ) : (
        <ul className="space-y-2">
          {unplugged.map((connector) => (
            <li key={connector} className="flex flex-wrap items-center justify-between gap-2">
              <span className="min-w-0">{names.connector(connector)}, unplugged</span>
              <Button onClick={() => send({ type: "plug", connector })}>
                Plug back<span className="sr-only"> {connector}</span>
              </Button>
            </li>
          ))}
          {pulledFuses.map((fuse) => (
            <li key={fuse} className="flex flex-wrap items-center justify-between gap-2">
              <span className="min-w-0">{names.fuse(fuse)}, pulled</span>
              <span className="flex gap-2">
                <Button onClick={() => send({ type: "fitFuse", fuse, fresh: false })}>
                  Put back<span className="sr-only"> {fuse}</span>
                </Button>
                <Button onClick={() => send({ type: "fitFuse", fuse, fresh: true })}>
                  Fit new<span className="sr-only"> fuse as {fuse}</span>
                </Button>
              </span>
            </li>
          ))}
        </ul>
      )}
      <NoticeLine notice={notice} about={["plug", "fitFuse"]} />
    </section>
  );
}
