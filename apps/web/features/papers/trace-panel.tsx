import { Button } from "@/components/button";
import type { Station, Trace } from "@/features/diagram/trace";

/** The stations of a traced path, from one end to the other; each can be gone to. */
export function TracePanel({
  trace,
  onGo,
  onEnd,
}: {
  readonly trace: Trace;
  readonly onGo: (station: Station) => void;
  readonly onEnd: () => void;
}) {
  return (
    <section aria-label={`Path of ${trace.start}`} className="border border-t-0 border-edge p-3">
      <div className="mb-1 flex flex-wrap items-center justify-between gap-3">
        <h3 className="text-base">
          Path of <code>{trace.start}</code>: {trace.conductors.size}{" "}
          {trace.conductors.size === 1 ? "conductor" : "conductors"}
        </h3>
        <Button onClick={onEnd}>Show everything again</Button>
      </div>
      <ol className="flex flex-wrap gap-x-1 gap-y-1">
        {trace.stations.map((station, position) => (
          <li key={station.key} className="flex items-center gap-1">
            {position > 0 && (
              <span aria-hidden="true" className="text-ink-soft">
                {station.kind === "branch" ? "; branch at" : "→"}
              </span>
            )}
            {station.kind === "branch" && <span className="sr-only">Branch at</span>}
            <button
              type="button"
              onClick={() => onGo(station)}
              className="link min-h-6 cursor-pointer text-left"
            >
              {station.text}
            </button>
          </li>
        ))}
      </ol>
    </section>
  );
}
