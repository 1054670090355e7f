import { notFound, redirect } from "next/navigation";
import { Bay } from "@/features/bay/bay";
import { TitleBlock } from "@/features/shell/title-block";
import { requireUser } from "@/server/auth/require-user";
import { database } from "@/server/database";
import { loadBay } from "@/server/views/bay-view";

export const metadata = { title: "Bay" };

export default async function BayPage({ params }: { readonly params: Promise<{ attemptId: string }> }) {
  const user = await requireUser(["learner"]);
  const { attemptId } = await params;
  const bay = await loadBay(await database(), user, attemptId);
  if (bay === undefined) notFound();
  if (bay.view.status === "submitted") redirect(`/jobs/${attemptId}/result`);
  return (
    <>
      <Bay
        attemptId={attemptId}
        initialView={bay.view}
        service={bay.service}
        index={bay.index}
        ownConditions={bay.ownConditions}
        ownSymptoms={bay.ownSymptoms}
      />
      <TitleBlock
        entries={[
          { label: "Job", value: bay.view.job.title },
          { label: "Vehicle", value: bay.view.job.vehicleTitle },
          { label: "Sheet", value: bay.view.job.systemTitle },
          { label: "State", value: "Under way" },
        ]}
      />
    </>
  );
}
