import "server-only";

export const roles = ["learner", "instructor", "manager", "administrator"] as const;
export type Role = (typeof roles)[number];

/** The person behind a request, as the database knows them at this moment. */
export interface SessionUser {
  readonly userId: string;
  readonly organisationId: string;
  readonly role: Role;
  readonly name: string;
  readonly email: string;
}
