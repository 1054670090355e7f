import Link from "next/link";
import { buttonClass } from "@/components/button-class";
import { Tag } from "@/components/tag";
import { LocalTime } from "@/features/time/local-time";
import type { Job } from "./jobs-view";
import { StartButton } from "./start-button";

const modeWords = { practice: "Practice", test: "Test", check: "Skills check" } as const;

/** One job a row: what it is, until when, how often, and the one thing to do next. */
export function JobList({ jobs }: { readonly jobs: readonly Job[] }) {
  return (
    <ul className="border-t border-ink">
      {jobs.map((job) => (
        <li
          key={job.assignmentId}
          className="grid items-center gap-x-6 gap-y-2 border-b border-hairline py-4 sm:grid-cols-[1fr_auto]"
        >
          <div className="min-w-0">
            <h3 className="text-lg">{job.title}</h3>
            <p className="flex flex-wrap gap-x-4 gap-y-1 text-ink-soft">
              <span>{modeWords[job.mode]}</span>
              {job.classTitle !== null && <span>{job.classTitle}</span>}
              <span>{attemptWords(job)}</span>
              <DateWords job={job} />
            </p>
          </div>
          <div className="flex flex-wrap items-center gap-4">
            <ScoreWords job={job} />
            <NextStep job={job} />
          </div>
        </li>
      ))}
    </ul>
  );
}

function NextStep({ job }: { readonly job: Job }) {
  const { title, assignmentId, openAttemptId, handedInAttemptId } = job;
  const result = handedInAttemptId !== null && (
    <Link
      href={`/jobs/${handedInAttemptId}/result`}
      className={buttonClass("quiet")}
      aria-label={`See the result: ${title}`}
    >
      See the result
    </Link>
  );
  if (openAttemptId !== null) {
    return (
      <>
        {result}
        <Link
          href={`/jobs/${openAttemptId}`}
          className={buttonClass("primary")}
          aria-label={`Go on: ${title}`}
        >
          Go on
        </Link>
      </>
    );
  }
  return (
    <>
      {result}
      {job.state === "startable" && (
        <StartButton
          assignmentId={assignmentId}
          title={title}
          label={job.attempts === 0 ? "Start" : "Start again"}
        />
      )}
    </>
  );
}

function ScoreWords({ job }: { readonly job: Job }) {
  if (job.score !== null) {
    const { score, maximum, passed, final } = job.score;
    return (
      <span className="flex items-center gap-3">
        <span className="font-mono text-lg">
          {score.toFixed(1)}
          <span className="text-ink-soft"> / {maximum}</span>
        </span>
        <Tag state={passed ? "done" : "attention"}>{passed ? "Passed" : "Not passed"}</Tag>
        {!final && <Tag state="waiting">Part waits for a person</Tag>}
      </span>
    );
  }
  if (job.handedInAttemptId !== null) return <Tag state="waiting">Handed in</Tag>;
  if (job.state === "closed") return <Tag state="closed">Closed</Tag>;
  if (job.state === "under_way") return <Tag state="active">Under way</Tag>;
  return null;
}

function attemptWords({ attempts, attemptLimit }: Job): string {
  if (attemptLimit === null)
    return attempts === 0 ? "as often as you like" : `${attempts} done, as often as you like`;
  const left = Math.max(0, attemptLimit - attempts);
  if (attempts === 0) return attemptLimit === 1 ? "one attempt" : `${attemptLimit} attempts`;
  return left === 0 ? "no attempts left" : `${left} of ${attemptLimit} attempts left`;
}

function DateWords({ job }: { readonly job: Job }) {
  if (job.state === "not_open_yet" && job.opensAt !== null) {
    return (
      <span>
        opens <LocalTime at={job.opensAt} />
      </span>
    );
  }
  if (job.closesAt === null) return <span>no end date</span>;
  return (
    <span>
      {job.state === "closed" || job.state === "finished" ? "closed" : "until"}{" "}
      <LocalTime at={job.closesAt} />
    </span>
  );
}
