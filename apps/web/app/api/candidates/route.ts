import { candidateInputSchema } from "@/features/candidates/candidate-input";
import { hirers } from "@/server/auth/staff";
import { problem } from "@/server/http/problem";
import { withRoute } from "@/server/http/with-route";
import { inviteCandidate } from "@/server/services/candidates/invite-candidate";

export const POST = withRoute({
  auth: hirers,
  body: candidateInputSchema,
  rateLimit: { name: "invite_candidate", requests: 60, perSeconds: 3600 },
  handler: async ({ user, database, body }) => {
    const invited = await inviteCandidate(database, user, body, new Date());
    if (invited.ok) return invited.value;
    const message = "There is no such check any more. Load the page again and choose from the list.";
    throw problem("invalid_input", { errors: [{ path: "scenarioVersionId", message }] });
  },
  audit: ({ answer, body }) => ({
    action: "invitation.created",
    resourceType: "invitation",
    resourceId: answer.id,
    detail: { name: body.name, email: body.email, title: body.title },
  }),
});
