import type { LearnerView } from "@probeworthy/evaluation";
import type { ReactNode } from "react";
import { formatShopTime } from "./log-words";

export interface JobStripProps {
  readonly view: LearnerView;
  readonly actions: ReactNode;
}

/** What the customer says, which vehicle, how much is left: always in sight. */
export function JobStrip({ view, actions }: JobStripProps) {
  const { job, limits } = view;
  return (
    <div className="sticky top-0 z-20 border-b border-ink bg-paper px-3 py-2 sm:px-4">
      <div className="flex flex-wrap items-start justify-between gap-x-6 gap-y-1">
        <div className="min-w-0 flex-1 basis-96">
          <h1 className="sr-only">{job.title}</h1>
          <p className="label-small">
            {job.vehicleTitle} · {job.systemTitle}
          </p>
          <p className="leading-snug font-semibold">
            <span className="sr-only">The customer says: </span>“{job.complaint}”
          </p>
        </div>
        <div className="flex flex-wrap items-center gap-x-5 gap-y-1">
          <Gauge
            label="Shop time"
            used={limits.shopSeconds}
            allowed={limits.shopSecondsAllowed}
            text={`${formatShopTime(limits.shopSeconds)} of ${formatShopTime(limits.shopSecondsAllowed)}`}
          />
          <Gauge
            label="Actions"
            used={limits.actions}
            allowed={limits.actionsAllowed}
            text={`${limits.actions} of ${limits.actionsAllowed}`}
          />
          {actions}
        </div>
      </div>
    </div>
  );
}

interface GaugeProps {
  readonly label: string;
  readonly used: number;
  readonly allowed: number;
  readonly text: string;
}

function Gauge({ label, used, allowed, text }: GaugeProps) {
  const share = allowed === 0 ? 1 : Math.min(1, used / allowed);
  return (
    <div className="min-w-28">
      <p className="flex justify-between gap-3 text-sm">
        <span className="text-ink-soft">{label}</span>
        <span className="font-mono">{text}</span>
      </p>
      <div aria-hidden="true" className="h-1.5 border border-edge">
        <div className="h-full bg-ink" style={{ width: `${share * 100}%` }} />
      </div>
      {share >= 0.9 && <p className="text-sm font-semibold">{share >= 1 ? "Used up" : "Nearly used up"}</p>}
    </div>
  );
}
