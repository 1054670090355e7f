"use client";

import { useRouter } from "next/navigation";
import { useState } from "react";
import { z } from "zod";
import { Button } from "@/components/button";
import { Dialog, DialogClose } from "@/components/dialog";
import { ProblemNotice } from "@/components/problem-notice";
import { callApi, postJson } from "@/features/http/api-client";
import { useCall } from "@/features/http/use-call";
import { count } from "@/features/wording/terms";
import { type Changes, changesSchema } from "../authoring-view";
import type { Saving } from "../draft/use-autosave";
import { ChangeList } from "../versions/change-list";

interface PublishDialogProps {
  readonly vehicleId: string;
  readonly publishedNumber: number | null;
  readonly saving: Saving;
  readonly onMessages: () => void;
}

/** What will be different, what stops it, and the step itself. */
export function PublishDialog({ vehicleId, publishedNumber, saving, onMessages }: PublishDialogProps) {
  const router = useRouter();
  const [open, setOpen] = useState(false);
  const [changes, setChanges] = useState<Changes["changes"]>();
  const loading = useCall();
  const publishing = useCall();
  const next = (publishedNumber ?? 0) + 1;
  const errors = saving.messages.filter(({ severity }) => severity === "error");
  const show = (isOpen: boolean) => {
    setOpen(isOpen);
    if (!isOpen) return;
    setChanges(undefined);
    publishing.clear();
    void loading.run(async () => {
      if ((await saving.save()) === undefined) return;
      const answer = await callApi(`/api/vehicles/${vehicleId}/changes`, { answer: changesSchema });
      setChanges(answer.changes);
    });
  };
  const publish = () =>
    publishing.run(async () => {
      const seenAt = await saving.save();
      if (seenAt === undefined) return;
      await postJson(`/api/vehicles/${vehicleId}/publish`, { seenAt }, z.object({ number: z.number() }));
      router.push(`/vehicles/${vehicleId}`);
      router.refresh();
    });
  const problem = publishing.problem ?? loading.problem;
  return (
    <Dialog
      title={`Publish version ${next}`}
      description="A published version never changes. Work already handed out keeps the version it was handed out with."
      open={open}
      onOpenChange={show}
      trigger={<Button kind="primary">Publish version {next}</Button>}
      actions={
        <>
          <DialogClose>
            <Button>Not yet</Button>
          </DialogClose>
          <Button
            kind="primary"
            busy={publishing.busy}
            disabled={errors.length > 0 || changes === undefined || changes.length === 0}
            onClick={() => void publish()}
          >
            Publish
          </Button>
        </>
      }
    >
      <div className="space-y-4">
        {problem !== undefined && <ProblemNotice problem={problem} />}
        {errors.length > 0 && (
          <div role="alert" className="border-l-4 border-ink bg-panel p-4">
            <p className="font-semibold">{count(errors.length, "message stops it", "messages stop it")}.</p>
            <Button
              className="mt-2"
              onClick={() => {
                setOpen(false);
                onMessages();
              }}
            >
              Show them
            </Button>
          </div>
        )}
        {changes === undefined ? (
          <p role="status">
            {loading.busy ? "Comparing with the last version…" : "The draft could not be saved."}
          </p>
        ) : changes.length === 0 ? (
          <p>Nothing is different from version {publishedNumber}.</p>
        ) : (
          <>
            <h3>
              {publishedNumber === null ? "What is in it" : `What changes against version ${publishedNumber}`}
            </h3>
            <ChangeList changes={changes} />
          </>
        )}
      </div>
    </Dialog>
  );
}
