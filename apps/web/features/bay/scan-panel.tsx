import type { Command, LearnerView } from "@probeworthy/evaluation";
import { Button } from "@/components/button";
import { describeStatus, formatShopTime } from "./log-words";
import type { Names } from "./names";
import { NoticeLine } from "./notice-line";
import type { Notice } from "./use-attempt";

export interface ScanPanelProps {
  readonly view: LearnerView;
  readonly names: Names;
  readonly notice: Notice | undefined;
  readonly pending: Command["type"] | undefined;
  readonly send: (command: Command) => void;
}

/** The scan tool: asks one module at a time; the last answer of each stays on the sheet with its line of the log. */
export function ScanPanel({ view, names, notice, pending, send }: ScanPanelProps) {
  const codes = view.instruments.includes("codes");
  const liveData = view.instruments.includes("liveData");
  if (!codes && !liveData) return <p>This job is done without a scan tool.</p>;
  return (
    <div className="space-y-6">
      <h2 className="sr-only">Scan tool</h2>
      <NoticeLine notice={notice} about={["readCodes", "readLiveData", "clearCodes"]} />
      {view.modules.map((module) => (
        <section key={module.id} aria-label={names.module(module.id)} className="border border-ink">
          <div className="flex flex-wrap items-center justify-between gap-2 border-b border-hairline p-3">
            <h3>{names.module(module.id)}</h3>
            <span className="flex flex-wrap gap-2">
              {codes && (
                <Button
                  busy={pending === "readCodes"}
                  onClick={() => send({ type: "readCodes", module: module.id })}
                >
                  Read codes
                </Button>
              )}
              {liveData && (
                <Button
                  busy={pending === "readLiveData"}
                  onClick={() => send({ type: "readLiveData", module: module.id })}
                >
                  Read live data
                </Button>
              )}
              {codes && (
                <Button
                  busy={pending === "clearCodes"}
                  onClick={() => send({ type: "clearCodes", module: module.id })}
                >
                  Clear codes
                </Button>
              )}
            </span>
          </div>
          <div className="grid gap-4 p-3 md:grid-cols-2">
            {codes && <CodesAnswer view={view} module={module.id} />}
            {liveData && <LiveDataAnswer view={view} module={module.id} />}
          </div>
        </section>
      ))}
    </div>
  );
}

interface AnswerProps {
  readonly view: LearnerView;
  readonly module: string;
}

function CodesAnswer({ view, module }: AnswerProps) {
  const line = view.log.findLast(
    (entry) => entry.observation.kind === "codes" && entry.observation.module === module,
  );
  const observation = line?.observation;
  if (line === undefined || observation?.kind !== "codes")
    return <p className="text-ink-soft">Codes not read yet.</p>;
  return (
    <div>
      <p className="label-small">Codes, {stamp(line)}</p>
      {!observation.answered && <p className="font-semibold">{observation.message}</p>}
      {observation.answered && observation.codes.length === 0 && (
        <p className="font-semibold">No codes stored.</p>
      )}
      <ul className="space-y-2">
        {observation.codes.map((code) => (
          <li key={code.code}>
            <code className="font-semibold">{code.code}</code> {code.text}
            <span className="block text-sm text-ink-soft">
              Status <code>{code.status.toString(16).toUpperCase().padStart(2, "0")}</code>
              {code.statusText.length > 0 && `: ${code.statusText.map(describeStatus).join(", ")}`}
            </span>
          </li>
        ))}
      </ul>
    </div>
  );
}

function LiveDataAnswer({ view, module }: AnswerProps) {
  const line = view.log.findLast(
    (entry) => entry.observation.kind === "liveData" && entry.observation.module === module,
  );
  const observation = line?.observation;
  if (line === undefined || observation?.kind !== "liveData") {
    return <p className="text-ink-soft">Live data not read yet.</p>;
  }
  return (
    <div>
      <p className="label-small">Live data, {stamp(line)}</p>
      {!observation.answered && <p className="font-semibold">{observation.message}</p>}
      <dl className="grid grid-cols-[1fr_max-content] gap-x-4 gap-y-0.5">
        {observation.values.map((value) => (
          <div key={value.name} className="contents">
            <dt>{value.title}</dt>
            <dd className="text-right font-mono">{`${value.text} ${value.unit}`.trim()}</dd>
          </div>
        ))}
      </dl>
    </div>
  );
}

function stamp(line: LearnerView["log"][number]): string {
  return `line ${line.sequence}, at ${formatShopTime(line.elapsedSeconds)}`;
}
