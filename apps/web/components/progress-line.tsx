export interface ProgressLineProps {
  readonly label: string;
  /** 0 to 1; leave out when nobody knows how long it takes. */
  readonly fraction?: number;
  /** In words beside the line, e.g. "3 of 10". */
  readonly valueText?: string;
}

export function ProgressLine({ label, fraction, valueText }: ProgressLineProps) {
  const clamped = fraction === undefined ? undefined : Math.min(1, Math.max(0, fraction));
  const percent = clamped === undefined ? undefined : Math.round(clamped * 100);
  return (
    <div>
      <div className="flex justify-between gap-4">
        <span>{label}</span>
        <span className="font-mono">{valueText ?? (percent === undefined ? "" : `${percent} %`)}</span>
      </div>
      <div
        role="progressbar"
        aria-label={label}
        aria-valuemin={0}
        aria-valuemax={100}
        aria-valuenow={percent}
        aria-valuetext={valueText}
        className="mt-1 h-2 border border-edge"
      >
        <div
          className={`h-full bg-copper-fill ${percent === undefined ? "w-1/3 animate-pulse" : ""}`}
          style={percent === undefined ? undefined : { width: `${percent}%` }}
        />
      </div>
    </div>
  );
}
