import { z } from "zod";

/** What the holder of a link may read before using it. */
export const invitationViewSchema = z.strictObject({
  organisationName: z.string(),
  name: z.string(),
  email: z.string(),
  jobTitle: z.string().nullable(),
  state: z.enum(["waiting", "used", "expired", "revoked"]),
  expiresAt: z.string(),
});
export type InvitationView = z.infer<typeof invitationViewSchema>;
