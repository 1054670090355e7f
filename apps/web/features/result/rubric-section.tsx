import { Tag } from "@/components/tag";
import { LineLinks } from "./line-links";
import type { ShownGrade } from "./result-view";

/** Every line of the rubric with what earned or lost its points, and where that stands in the log. */
export function RubricSection({ lines }: { readonly lines: ShownGrade["lines"] }) {
  return (
    <section aria-labelledby="result-lines">
      <h2 id="result-lines" className="mb-2">
        How the points came about
      </h2>
      <ul className="border-t border-ink">
        {lines
          .filter((line) => line.maximum > 0)
          .map((line) => (
            <li
              key={line.line}
              className="keep-together grid gap-x-6 border-b border-hairline py-4 sm:grid-cols-[14rem_1fr]"
            >
              <div>
                <h3>{line.title}</h3>
                <p className="font-mono">
                  <span className="text-xl font-semibold">{format(line.points)}</span>
                  <span className="text-ink-soft"> of {format(line.maximum)}</span>
                </p>
                <div aria-hidden="true" className="mt-1 h-2 max-w-48 border border-edge">
                  <div className="h-full bg-ink" style={{ width: `${line.share * 100}%` }} />
                </div>
                {line.awaitsPerson && (
                  <p className="mt-2">
                    <Tag state="waiting">Part waits for a person</Tag>
                  </p>
                )}
              </div>
              <ul className="mt-2 space-y-1.5 sm:mt-0">
                {line.reasons.map((reason) => (
                  <li key={`${reason.text} ${reason.lines.join(" ")}`} className="flex gap-3">
                    <span className="w-5 shrink-0 text-center font-mono font-semibold" aria-hidden="true">
                      {reason.effect > 0 ? "+" : reason.effect < 0 ? "−" : "·"}
                    </span>
                    <span>
                      <span className="sr-only">
                        {reason.effect > 0 ? "Earned: " : reason.effect < 0 ? "Lost: " : "Noted: "}
                      </span>
                      {reason.text} <LineLinks lines={reason.lines} />
                    </span>
                  </li>
                ))}
                {line.reasons.length === 0 && <li className="text-ink-soft">Nothing to remark.</li>}
              </ul>
            </li>
          ))}
      </ul>
    </section>
  );
}

function format(points: number): string {
  return Number.isInteger(points) ? String(points) : points.toFixed(1);
}
