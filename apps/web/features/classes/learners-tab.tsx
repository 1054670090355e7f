"use client";

import { useRouter } from "next/navigation";
import { z } from "zod";
import { Button } from "@/components/button";
import { Dialog, DialogClose } from "@/components/dialog";
import { EmptyState } from "@/components/empty-state";
import { ProblemNotice } from "@/components/problem-notice";
import { RowButton } from "@/components/row-button";
import { Cell, HeaderCell, Table, TableBody, TableHead, TableRow } from "@/components/table";
import { callApi } from "@/features/http/api-client";
import { useCall } from "@/features/http/use-call";
import { LocalTime } from "@/features/time/local-time";
import type { ClassView } from "./class-view";
import { EnrolForm } from "./enrol-form";

export interface LearnersTabProps {
  readonly classId: string;
  readonly roster: ClassView["roster"];
}

export function LearnersTab({ classId, roster }: LearnersTabProps) {
  return (
    <div className="grid gap-x-12 gap-y-8 xl:grid-cols-[1fr_26rem]">
      <div className="min-w-0">
        {roster.length === 0 ? (
          <EmptyState title="Nobody is enrolled yet">
            Add learners by e-mail address. Who has no account yet gets one with a first password.
          </EmptyState>
        ) : (
          <Table caption="Learners of this class" captionHidden>
            <TableHead>
              <tr>
                <HeaderCell>Name</HeaderCell>
                <HeaderCell>E-mail</HeaderCell>
                <HeaderCell numeric>Begun</HeaderCell>
                <HeaderCell numeric>Handed in</HeaderCell>
                <HeaderCell>Last start</HeaderCell>
                <HeaderCell>
                  <span className="sr-only">Remove</span>
                </HeaderCell>
              </tr>
            </TableHead>
            <TableBody>
              {roster.map((learner) => (
                <TableRow key={learner.userId}>
                  <HeaderCell scope="row" className="max-w-64 break-words">
                    {learner.name}
                  </HeaderCell>
                  <Cell className="max-w-72 break-all">{learner.email}</Cell>
                  <Cell numeric>{learner.begun}</Cell>
                  <Cell numeric>{learner.handedIn}</Cell>
                  <Cell className="whitespace-nowrap">
                    {learner.lastStartedAt === null ? (
                      <span className="text-ink-soft">never</span>
                    ) : (
                      <LocalTime at={learner.lastStartedAt} />
                    )}
                  </Cell>
                  <Cell className="text-right">
                    <RemoveLearner classId={classId} userId={learner.userId} name={learner.name} />
                  </Cell>
                </TableRow>
              ))}
            </TableBody>
          </Table>
        )}
      </div>
      <EnrolForm classId={classId} />
    </div>
  );
}

interface RemoveLearnerProps {
  readonly classId: string;
  readonly userId: string;
  readonly name: string;
}

function RemoveLearner({ classId, userId, name }: RemoveLearnerProps) {
  const router = useRouter();
  const { busy, problem, run } = useCall();
  const remove = () =>
    run(async () => {
      await callApi(`/api/classes/${classId}/learners/${userId}`, {
        method: "DELETE",
        answer: z.undefined(),
      });
      router.refresh();
    });
  return (
    <Dialog
      title={`Take ${name} off the list?`}
      description="Attempts and grades are kept and come back when the person is enrolled again."
      trigger={<RowButton aria-label={`Remove ${name}`}>Remove</RowButton>}
      actions={
        <>
          <DialogClose>
            <Button>Keep</Button>
          </DialogClose>
          <Button kind="danger" busy={busy} onClick={() => void remove()}>
            Take off the list
          </Button>
        </>
      }
    >
      {problem === undefined ? undefined : <ProblemNotice problem={problem} />}
    </Dialog>
  );
}
