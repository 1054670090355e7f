import { EmptyState } from "@/components/empty-state";
import { JobList } from "./job-list";
import type { Job } from "./jobs-view";

const isOpen = (job: Job) => job.state === "startable" || job.state === "under_way";

/** Work to do first, then what opens later, then what is finished. */
export function JobsScreen({ jobs }: { readonly jobs: readonly Job[] }) {
  const open = [
    ...jobs.filter((job) => job.state === "under_way"),
    ...jobs.filter((job) => job.state === "startable"),
  ];
  const later = jobs.filter((job) => job.state === "not_open_yet");
  const finished = jobs.filter((job) => !isOpen(job) && job.state !== "not_open_yet");
  return (
    <div className="space-y-10">
      <section aria-labelledby="jobs-open">
        <h2 id="jobs-open" className="mb-2">
          To do
        </h2>
        {open.length === 0 ? (
          <EmptyState title="No jobs to do">
            When your instructor hands out a job it stands here, with the day it is due.
          </EmptyState>
        ) : (
          <JobList jobs={open} />
        )}
      </section>
      {later.length > 0 && (
        <section aria-labelledby="jobs-later">
          <h2 id="jobs-later" className="mb-2">
            Later
          </h2>
          <JobList jobs={later} />
        </section>
      )}
      <section aria-labelledby="jobs-finished">
        <h2 id="jobs-finished" className="mb-2">
          Finished
        </h2>
        {finished.length === 0 ? (
          <p className="text-ink-soft">Nothing is finished yet. Results you may see are listed here.</p>
        ) : (
          <JobList jobs={finished} />
        )}
      </section>
    </div>
  );
}
