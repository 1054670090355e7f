import { EmptyState } from "@/components/empty-state";
import { LocalTime } from "@/features/time/local-time";
import { InvitationForm } from "./invitation-form";
import type { InvitationView } from "./invitation-view";

export interface InvitationScreenProps {
  readonly token: string;
  readonly invitation: InvitationView | undefined;
  readonly signedInAs: string | undefined;
}

const gone = {
  used: {
    title: "This link has been used",
    text: "It works once. If it was you, sign in to go on with your job.",
  },
  expired: { title: "This link has run out", text: "Ask the shop for a new one." },
  revoked: { title: "This link was withdrawn", text: "Ask the shop if you think that is a mistake." },
} as const;

/** Who invites, what will happen, and the one form that starts it. */
export function InvitationScreen({ token, invitation, signedInAs }: InvitationScreenProps) {
  if (invitation === undefined) {
    return (
      <>
        <h1 className="mb-6">Invitation</h1>
        <EmptyState title="This link is not known">
          Check that the whole link was copied, or ask the shop for a new one.
        </EmptyState>
      </>
    );
  }
  if (invitation.state !== "waiting") {
    const { title, text } = gone[invitation.state];
    return (
      <>
        <h1 className="mb-6">Invitation from {invitation.organisationName}</h1>
        <EmptyState title={title}>{text}</EmptyState>
      </>
    );
  }
  return (
    <div className="flex flex-wrap gap-x-16 gap-y-10">
      <div className="w-full max-w-prose flex-1 basis-96">
        <h1>{invitation.organisationName} invites you</h1>
        <p className="mt-2">
          {invitation.jobTitle === null
            ? "You get an account and can start on the jobs that are handed out to you."
            : `You find an electrical fault on a simulated car: “${invitation.jobTitle}”.`}
        </p>
        {invitation.jobTitle !== null && (
          <ol className="mt-4 list-decimal space-y-2 pl-5">
            <li>You get a customer's complaint, a wiring diagram, service information and a multimeter.</li>
            <li>You measure, unplug and try as you would in the shop. Every step is recorded.</li>
            <li>
              Shop time and actions are limited; both stand at the top of the screen. The clock of the job
              runs only with what you do, so you may stop and think.
            </li>
            <li>
              You hand in concern, cause and correction once. {invitation.organisationName} gets the result.
            </li>
          </ol>
        )}
        <p className="mt-4 text-ink-soft">
          The link works once, until <LocalTime at={invitation.expiresAt} />. Use a computer or a tablet with
          a keyboard or a large screen.
        </p>
      </div>
      <div className="w-full max-w-md">
        <h2 className="mb-4">Start</h2>
        <InvitationForm
          token={token}
          name={invitation.name}
          email={invitation.email}
          signedInAs={signedInAs}
        />
      </div>
    </div>
  );
}
