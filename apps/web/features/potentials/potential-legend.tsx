import { potentialColour } from "@/features/diagram/potential-scale";

const steps = 24;

/** The scale of the drawing with its figures, and how current is shown. */
export function PotentialLegend({ supplyVolts }: { readonly supplyVolts: number }) {
  const marks = [0, 0.25, 0.5, 0.75, 1];
  return (
    <figure className="flex flex-wrap items-end gap-x-8 gap-y-2 py-2" aria-label="Scale of the drawing">
      <div className="w-full max-w-md">
        <div aria-hidden="true" className="flex h-4 border border-ink">
          {Array.from({ length: steps }, (_, step) => (step / (steps - 1)) * supplyVolts).map((volts) => (
            <span
              key={volts}
              className="flex-1"
              style={{ backgroundColor: potentialColour(volts, supplyVolts) }}
            />
          ))}
        </div>
        <div className="flex justify-between font-mono text-sm">
          {marks.map((share) => (
            <span key={share}>{(share * supplyVolts).toFixed(1)} V</span>
          ))}
        </div>
      </div>
      <figcaption className="max-w-prose text-sm">
        Each half of a conductor has the colour of its end; the figure beside it is the voltage of the nearer
        end against the body. The arrow shows which way current flows, a thicker line more of it; no arrow is
        less than 1 mA.
      </figcaption>
    </figure>
  );
}
