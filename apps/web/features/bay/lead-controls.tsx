import type { LearnerView } from "@probeworthy/evaluation";
import clsx from "clsx";
import type { Names } from "./names";

export type Lead = "red" | "black";

export interface LeadControlsProps {
  readonly bench: LearnerView["bench"];
  readonly names: Names;
  readonly armed: Lead;
  readonly onArm: (lead: Lead) => void;
  readonly onLift: (lead: Lead) => void;
}

const leads: readonly {
  readonly lead: Lead;
  readonly sign: string;
  readonly title: string;
  readonly key: string;
}[] = [
  { lead: "red", sign: "+", title: "Red lead", key: "R" },
  { lead: "black", sign: "−", title: "Black lead", key: "B" },
];

/** Which lead is in the hand. The next point chosen gets it, then the other one is in the hand. */
export function LeadControls({ bench, names, armed, onArm, onLift }: LeadControlsProps) {
  return (
    <fieldset>
      <legend className="label-small pb-1">Lead in hand: choose one, then choose a point</legend>
      <div className="space-y-1">
        {leads.map(({ lead, sign, title, key }) => {
          const point = bench[lead];
          return (
            <div key={lead} className="flex gap-1">
              <button
                type="button"
                aria-pressed={armed === lead}
                aria-keyshortcuts={key}
                onClick={() => onArm(lead)}
                className={clsx(
                  "flex min-h-11 min-w-0 flex-1 cursor-pointer items-center gap-2 rounded-sheet border-2 px-2 text-left",
                  armed === lead ? "border-copper-fill bg-panel" : "border-edge hover:border-ink",
                )}
              >
                <LeadMarker lead={lead} sign={sign} />
                <span className="min-w-0">
                  <span className="block leading-tight font-semibold">
                    {title}
                    {armed === lead && <span className="font-normal"> in hand</span>}
                  </span>
                  <span className="block truncate text-sm leading-tight">
                    {point === null ? "in the air" : names.point(point)}
                  </span>
                </span>
              </button>
              <button
                type="button"
                disabled={point === null}
                aria-label={`Lift the ${lead} lead`}
                onClick={() => onLift(lead)}
                className="min-h-11 min-w-12 cursor-pointer rounded-sheet border border-edge px-2 text-sm hover:border-ink disabled:cursor-not-allowed disabled:text-ink-soft disabled:opacity-60"
              >
                Lift
              </button>
            </div>
          );
        })}
      </div>
    </fieldset>
  );
}

/** The trade's own colours, with the sign inside so that the colour is never alone. */
export function LeadMarker({ lead, sign }: { readonly lead: Lead; readonly sign: string }) {
  return (
    <svg viewBox="0 0 28 28" className="size-7 shrink-0" aria-hidden="true" focusable="false">
      <circle
        cx="14"
        cy="14"
        r="12"
        fill={lead === "red" ? "#b3261e" : "#1b1b1b"}
        stroke="var(--paper)"
        strokeWidth="1.5"
      />
      <circle cx="14" cy="14" r="13" fill="none" stroke="var(--ink)" strokeWidth="1" />
      <text x="14" y="19" textAnchor="middle" fontSize="16" fontWeight="600" fill="#ffffff">
        {sign}
      </text>
    </svg>
  );
}
