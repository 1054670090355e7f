import type { LearnerView } from "@probeworthy/evaluation";
import clsx from "clsx";

type Noticed = LearnerView["noticed"];

/** What one notices of the system at hand, and folded away below it what one notices walking round the car. */
export function NoticedList({
  noticed,
  own,
  columns = false,
}: {
  readonly noticed: Noticed;
  /** Ids of what belongs to the system; empty shows everything open. */
  readonly own: readonly string[];
  /** Beside each other where there is room. */
  readonly columns?: boolean;
}) {
  const isOwn = ({ id }: Noticed[number]) => own.length === 0 || own.includes(id);
  const rest = noticed.filter((item) => !isOwn(item));
  return (
    <>
      <Rows noticed={noticed.filter(isOwn)} columns={columns} />
      {rest.length > 0 && (
        <details className="mt-3 border-t border-hairline pt-1">
          <summary className="flex min-h-11 cursor-pointer flex-wrap items-center justify-between gap-x-3">
            <span className="font-semibold">The rest of the car</span>
            <span className="text-sm text-ink-soft">{rest.length} things to look at</span>
          </summary>
          <div className="pt-2 pb-3">
            <Rows noticed={rest} columns={columns} />
          </div>
        </details>
      )}
    </>
  );
}

function Rows({ noticed, columns }: { readonly noticed: Noticed; readonly columns: boolean }) {
  return (
    <dl className={clsx("grid gap-x-8 gap-y-2", columns && "sm:grid-cols-2 lg:grid-cols-3")}>
      {noticed.map((item) => (
        <div key={item.id} className="border-l-2 border-edge pl-2">
          <dt className="label-small">{item.title}</dt>
          <dd>{item.text}</dd>
        </div>
      ))}
    </dl>
  );
}
