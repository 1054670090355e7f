"use client";

import { useRouter } from "next/navigation";
import { z } from "zod";
import { Button } from "@/components/button";
import { Dialog, DialogClose } from "@/components/dialog";
import { ProblemNotice } from "@/components/problem-notice";
import { postJson } from "@/features/http/api-client";
import { useCall } from "@/features/http/use-call";

export interface ArchiveButtonProps {
  readonly scenarioId: string;
  readonly title: string;
}

export function ArchiveButton({ scenarioId, title }: ArchiveButtonProps) {
  const router = useRouter();
  const { busy, problem, run } = useCall();
  const archive = () =>
    run(async () => {
      await postJson(`/api/scenarios/${scenarioId}/archive`, undefined, z.undefined());
      router.push("/scenarios");
      router.refresh();
    });
  return (
    <Dialog
      title={`Take “${title}” off the list?`}
      description="Nobody can hand it out any more. Work already handed out from it goes on."
      trigger={<Button>Take off the list</Button>}
      actions={
        <>
          <DialogClose>
            <Button>Keep it</Button>
          </DialogClose>
          <Button kind="danger" busy={busy} onClick={() => void archive()}>
            Take off the list
          </Button>
        </>
      }
    >
      {problem === undefined ? undefined : <ProblemNotice problem={problem} />}
    </Dialog>
  );
}
