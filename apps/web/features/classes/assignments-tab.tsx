"use client";

import Link from "next/link";
import { useRouter } from "next/navigation";
import { z } from "zod";
import { Button } from "@/components/button";
import { buttonClass } from "@/components/button-class";
import { Dialog, DialogClose } from "@/components/dialog";
import { EmptyState } from "@/components/empty-state";
import { ProblemNotice } from "@/components/problem-notice";
import { RowButton } from "@/components/row-button";
import { Cell, HeaderCell, Table, TableBody, TableHead, TableRow } from "@/components/table";
import { postJson } from "@/features/http/api-client";
import { useCall } from "@/features/http/use-call";
import { LocalTime } from "@/features/time/local-time";
import { modeWords, revealWords } from "@/features/wording/terms";
import type { ClassView } from "./class-view";

type Assignment = ClassView["assignments"][number];

export interface AssignmentsTabProps {
  readonly classId: string;
  readonly assignments: readonly Assignment[];
}

export function AssignmentsTab({ classId, assignments }: AssignmentsTabProps) {
  if (assignments.length === 0) {
    return (
      <EmptyState
        title="No work handed out"
        action={
          <Link href={`/classes/${classId}/assignments/new`} className={buttonClass("primary")}>
            Hand out work
          </Link>
        }
      >
        Choose a scenario and say from when to when and how often it may be worked.
      </EmptyState>
    );
  }
  return (
    <Table caption="Work handed out to this class" captionHidden>
      <TableHead>
        <tr>
          <HeaderCell>Title for learners</HeaderCell>
          <HeaderCell>Scenario</HeaderCell>
          <HeaderCell>Kind</HeaderCell>
          <HeaderCell>Window</HeaderCell>
          <HeaderCell>Attempts each</HeaderCell>
          <HeaderCell numeric>Pass mark</HeaderCell>
          <HeaderCell>Results shown</HeaderCell>
          <HeaderCell numeric>Handed in</HeaderCell>
          <HeaderCell>
            <span className="sr-only">Take back</span>
          </HeaderCell>
        </tr>
      </TableHead>
      <TableBody>
        {assignments.map((assignment) => (
          <TableRow key={assignment.id}>
            <HeaderCell scope="row" className="min-w-40">
              {assignment.title}
            </HeaderCell>
            <Cell className="min-w-32">{assignment.scenarioTitle}</Cell>
            <Cell>{modeWords[assignment.mode]}</Cell>
            <Cell>
              <Window assignment={assignment} />
            </Cell>
            <Cell>{assignment.attemptLimit ?? "no limit"}</Cell>
            <Cell numeric>{assignment.passMark}</Cell>
            <Cell>{revealWords[assignment.reveal]}</Cell>
            <Cell numeric className="whitespace-nowrap">
              {assignment.handedIn} of {assignment.attempts}
            </Cell>
            <Cell className="text-right">
              <TakeBack assignment={assignment} />
            </Cell>
          </TableRow>
        ))}
      </TableBody>
    </Table>
  );
}

function Window({ assignment }: { readonly assignment: Assignment }) {
  const { opensAt, closesAt } = assignment;
  if (opensAt === null && closesAt === null) return <>always</>;
  return (
    <>
      {opensAt !== null && (
        <span className="block whitespace-nowrap">
          from <LocalTime at={opensAt} />
        </span>
      )}
      {closesAt !== null && (
        <span className="block whitespace-nowrap">
          until <LocalTime at={closesAt} />
        </span>
      )}
    </>
  );
}

function TakeBack({ assignment }: { readonly assignment: Assignment }) {
  const router = useRouter();
  const { busy, problem, run } = useCall();
  const takeBack = () =>
    run(async () => {
      await postJson(`/api/assignments/${assignment.id}/archive`, undefined, z.undefined());
      router.refresh();
    });
  return (
    <Dialog
      title={`Take back “${assignment.title}”?`}
      description="It leaves the job lists and the gradebook. What was handed in is kept."
      trigger={<RowButton aria-label={`Take back ${assignment.title}`}>Take back</RowButton>}
      actions={
        <>
          <DialogClose>
            <Button>Keep it</Button>
          </DialogClose>
          <Button kind="danger" busy={busy} onClick={() => void takeBack()}>
            Take back
          </Button>
        </>
      }
    >
      {problem === undefined ? undefined : <ProblemNotice problem={problem} />}
    </Dialog>
  );
}
