"use client";

import Link from "next/link";
import { useRouter } from "next/navigation";
import { z } from "zod";
import { Button } from "@/components/button";
import { Dialog, DialogClose } from "@/components/dialog";
import { EmptyState } from "@/components/empty-state";
import { ProblemNotice } from "@/components/problem-notice";
import { RowButton } from "@/components/row-button";
import { Cell, HeaderCell, Table, TableBody, TableHead, TableRow } from "@/components/table";
import { Tag, type TagState } from "@/components/tag";
import { postJson } from "@/features/http/api-client";
import { useCall } from "@/features/http/use-call";
import { LocalTime } from "@/features/time/local-time";
import { type CandidateLine, candidateStateWords } from "./candidates-view";

const marks: Readonly<Record<CandidateLine["state"], TagState>> = {
  waiting: "open",
  expired: "closed",
  revoked: "closed",
  used: "active",
  working: "active",
  awaiting: "waiting",
  graded: "done",
};

export function CandidateList({ candidates }: { readonly candidates: readonly CandidateLine[] }) {
  if (candidates.length === 0) {
    return (
      <EmptyState title="Nobody is invited yet">
        “Invite a candidate” makes a link for one person and one check. Send it the way you like.
      </EmptyState>
    );
  }
  return (
    <Table caption="Candidates" captionHidden>
      <TableHead>
        <tr>
          <HeaderCell>Candidate</HeaderCell>
          <HeaderCell>Check</HeaderCell>
          <HeaderCell>Invited</HeaderCell>
          <HeaderCell>State</HeaderCell>
          <HeaderCell numeric>Score</HeaderCell>
          <HeaderCell>
            <span className="sr-only">Next step</span>
          </HeaderCell>
        </tr>
      </TableHead>
      <TableBody>
        {candidates.map((candidate) => (
          <TableRow key={candidate.id}>
            <HeaderCell scope="row" className="max-w-72">
              <span className="block break-words">{candidate.name}</span>
              <span className="block text-sm font-normal break-all text-ink-soft">{candidate.email}</span>
            </HeaderCell>
            <Cell className="max-w-80">{candidate.title}</Cell>
            <Cell className="whitespace-nowrap">
              <LocalTime at={candidate.invitedAt} />
              {candidate.state === "waiting" && (
                <span className="block text-sm text-ink-soft">
                  link until <LocalTime at={candidate.expiresAt} />
                </span>
              )}
            </Cell>
            <Cell>
              <Tag state={candidate.passed === false ? "attention" : marks[candidate.state]}>
                {candidate.passed === null
                  ? candidateStateWords[candidate.state]
                  : candidate.passed
                    ? "Passed"
                    : "Not passed"}
              </Tag>
              {candidate.unread && <span className="block text-sm text-ink-soft">report to read</span>}
            </Cell>
            <Cell numeric>{candidate.score === null ? "" : candidate.score.toFixed(1)}</Cell>
            <Cell className="text-right">
              <NextStep candidate={candidate} />
            </Cell>
          </TableRow>
        ))}
      </TableBody>
    </Table>
  );
}

function NextStep({ candidate }: { readonly candidate: CandidateLine }) {
  switch (candidate.state) {
    case "waiting":
      return <Revoke candidate={candidate} />;
    case "expired":
    case "revoked":
      return null;
    default:
      return (
        <Link href={`/candidates/${candidate.id}`} className="link inline-block min-h-6 whitespace-nowrap">
          {candidate.state === "graded" ? "See the result" : "See how far"}
          <span className="sr-only"> of {candidate.name}</span>
        </Link>
      );
  }
}

function Revoke({ candidate }: { readonly candidate: CandidateLine }) {
  const router = useRouter();
  const { busy, problem, run } = useCall();
  const revoke = () =>
    run(async () => {
      await postJson(`/api/candidates/${candidate.id}/revoke`, undefined, z.undefined());
      router.refresh();
    });
  return (
    <Dialog
      title={`Withdraw the link for ${candidate.name}?`}
      description="Whoever opens it then reads that it was withdrawn. You can invite the person again."
      trigger={<RowButton aria-label={`Withdraw the link for ${candidate.name}`}>Withdraw</RowButton>}
      actions={
        <>
          <DialogClose>
            <Button>Keep it</Button>
          </DialogClose>
          <Button kind="danger" busy={busy} onClick={() => void revoke()}>
            Withdraw the link
          </Button>
        </>
      }
    >
      {problem === undefined ? undefined : <ProblemNotice problem={problem} />}
    </Dialog>
  );
}
