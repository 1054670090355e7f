import { after } from "next/server";
import { JobsScreen } from "@/features/jobs/jobs-screen";
import { SheetPage } from "@/features/shell/sheet-page";
import { requireUser } from "@/server/auth/require-user";
import { database } from "@/server/database";
import { loadJobs } from "@/server/views/jobs-view";
import { readyPapers } from "@/server/views/ready-papers";

export const metadata = { title: "Jobs" };

export default async function JobsPage() {
  const user = await requireUser(["learner"]);
  const jobs = await loadJobs(await database(), user, new Date());
  const open = jobs.filter((job) => job.state === "startable" || job.state === "under_way");
  after(async () => {
    await readyPapers(
      await database(),
      user,
      open.map(({ assignmentId }) => assignmentId),
    );
  });
  return (
    <SheetPage
      title="Jobs"
      lead="Cars with a complaint, handed out by your instructor or the shop."
      entries={[
        { label: "Name", value: user.name },
        { label: "Sheet", value: "Jobs" },
        { label: "To do", value: open.length },
      ]}
    >
      <JobsScreen jobs={jobs} />
    </SheetPage>
  );
}
