"use client";

import { useRouter } from "next/navigation";
import { z } from "zod";
import { Button } from "@/components/button";
import { Dialog, DialogClose } from "@/components/dialog";
import { ProblemNotice } from "@/components/problem-notice";
import { RowButton } from "@/components/row-button";
import { postJson } from "@/features/http/api-client";
import { useCall } from "@/features/http/use-call";

interface ArchiveVehicleButtonProps {
  readonly vehicleId: string;
  readonly name: string;
}

/** Takes a vehicle out of the lists; scenarios and work already handed out keep it. */
export function ArchiveVehicleButton({ vehicleId, name }: ArchiveVehicleButtonProps) {
  const router = useRouter();
  const { busy, problem, run } = useCall();
  const archive = () =>
    run(async () => {
      await postJson(`/api/vehicles/${vehicleId}/archive`, { archived: true }, z.unknown());
      router.refresh();
    });
  return (
    <Dialog
      title={`Archive ${name}`}
      description="It leaves the lists. Scenarios built on it and work already handed out keep it."
      trigger={<RowButton aria-label={`Archive ${name}`}>Archive</RowButton>}
      actions={
        <>
          <DialogClose>
            <Button>Keep it</Button>
          </DialogClose>
          <Button kind="danger" busy={busy} onClick={() => void archive()}>
            Archive
          </Button>
        </>
      }
    >
      {problem !== undefined && <ProblemNotice problem={problem} />}
    </Dialog>
  );
}
