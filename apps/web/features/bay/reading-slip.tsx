import type { LearnerView } from "@probeworthy/evaluation";
import { summariseContext } from "./log-words";
import type { Names } from "./names";
import { ReadingStrip } from "./reading-strip";
import { explainState, formatDisplay, functionTitles } from "./reading-words";

export interface ReadingSlipProps {
  readonly view: LearnerView;
  readonly names: Names;
  readonly busy: boolean;
}

/**
 * The slip a reading is written on: one large signed figure, then function, range, the two places and the condition of
 * the car. Its height does not depend on whether there is a figure, so that nothing moves under the hand.
 */
export function ReadingSlip({ view, names, busy }: ReadingSlipProps) {
  const { slip, bench } = view;
  const line = slip === null ? undefined : view.log.find((entry) => entry.sequence === slip.sequence);
  const observed = line?.observation.kind === "reading" ? line.observation : undefined;
  return (
    <section aria-label="Reading slip" className="border border-ink bg-paper" aria-busy={busy}>
      <div className="flex items-baseline justify-between gap-2 whitespace-nowrap border-b border-hairline px-3 py-1 text-sm">
        <span className="text-ink-soft">{slip === null ? "No reading yet" : `Line ${slip.sequence}`}</span>
        <SlipState slip={slip} busy={busy} />
      </div>
      <p
        className={`flex min-h-16 items-baseline justify-end gap-2 px-3 pt-2 font-mono whitespace-nowrap ${slip !== null && !slip.current ? "text-ink-soft" : ""}`}
        data-testid="slip-figure"
      >
        <span className="text-[2.75rem] leading-none font-medium tracking-tight">
          {slip === null ? "– – –" : formatDisplay(slip.reading)}
        </span>
        <span className="min-w-8 text-2xl">{slip?.reading.state === "value" ? slip.reading.unit : ""}</span>
      </p>
      <p className="min-h-6 px-3 text-right text-sm">{slip === null ? "" : explainState(slip.reading)}</p>
      <dl className="grid grid-cols-[4.5rem_1fr] gap-x-3 gap-y-0.5 border-t border-hairline px-3 py-2 text-sm">
        <dt className="text-ink-soft">Function</dt>
        <dd>
          {functionTitles[slip?.reading.function ?? bench.function]}
          {slip !== null && `, range ${slip.reading.range}`}
          {slip?.reading.function === "continuity" && (slip.reading.sounds ? ", tone" : ", no tone")}
        </dd>
        <dt className="text-ink-soft">Red +</dt>
        <dd>{observed === undefined ? leadPlace(bench.red, names) : names.point(observed.red)}</dd>
        <dt className="text-ink-soft">Black −</dt>
        <dd>{observed === undefined ? leadPlace(bench.black, names) : names.point(observed.black)}</dd>
        <dt className="text-ink-soft">Car</dt>
        <dd className="line-clamp-3 min-h-15">
          {observed === undefined
            ? "Take a reading to write the slip"
            : summariseContext(observed.context, names)}
        </dd>
      </dl>
      <ReadingStrip log={view.log} meterFunction={slip?.reading.function ?? bench.function} />
    </section>
  );
}

function SlipState({ slip, busy }: { readonly slip: LearnerView["slip"]; readonly busy: boolean }) {
  if (busy) return <span>measuring …</span>;
  if (slip === null) return null;
  return slip.current ? (
    <span>holds now</span>
  ) : (
    <span className="font-semibold">stale: something has changed</span>
  );
}

function leadPlace(point: string | null, names: Names): string {
  return point === null ? "in the air" : names.point(point);
}
