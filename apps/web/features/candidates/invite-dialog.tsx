"use client";

import { useRouter } from "next/navigation";
import { useState } from "react";
import { Button } from "@/components/button";
import { CopyButton } from "@/components/copy-button";
import { Dialog, DialogClose } from "@/components/dialog";
import type { CandidatesView } from "./candidates-view";
import { InviteForm } from "./invite-form";

const linkId = "invitation-link";

export interface InviteDialogProps {
  readonly checks: CandidatesView["checks"];
}

/** The form, then the link: shown once, because only its fingerprint is kept. */
export function InviteDialog({ checks }: InviteDialogProps) {
  const router = useRouter();
  const [open, setOpen] = useState(false);
  const [invited, setInvited] = useState<{ name: string; link: string }>();
  const change = (next: boolean) => {
    setOpen(next);
    if (!next && invited !== undefined) {
      setInvited(undefined);
      router.refresh();
    }
  };
  return (
    <Dialog
      title={invited === undefined ? "Invite a candidate" : `The link for ${invited.name}`}
      description={
        invited === undefined ? "One person, one check, one attempt." : "It is shown only now and works once."
      }
      trigger={
        <Button kind="primary" disabled={checks.length === 0}>
          Invite a candidate
        </Button>
      }
      open={open}
      onOpenChange={change}
      {...(invited === undefined
        ? {}
        : {
            actions: (
              <DialogClose>
                <Button kind="primary">Done</Button>
              </DialogClose>
            ),
          })}
    >
      {invited === undefined ? (
        <InviteForm
          checks={checks}
          onInvited={({ name, path }) => setInvited({ name, link: `${window.location.origin}${path}` })}
        />
      ) : (
        <div className="space-y-4">
          <p
            id={linkId}
            data-testid="invitation-link"
            className="border border-edge bg-panel p-3 font-mono break-all"
          >
            {invited.link}
          </p>
          <CopyButton text={invited.link} label="Copy the link" sourceId={linkId} />
          <p className="text-ink-soft">
            Send it to {invited.name} by mail or message. If it gets lost, withdraw it and invite again.
          </p>
        </div>
      )}
    </Dialog>
  );
}
