import { z } from "zod";

export const roleNames = ["learner", "instructor", "manager", "administrator"] as const;

export const personInputSchema = z.strictObject({
  name: z.string().trim().min(2, "Write the person's name.").max(120, "At most 120 characters."),
  email: z.email("Write an e-mail address.").max(320),
  role: z.enum(roleNames),
});
export type PersonInput = z.infer<typeof personInputSchema>;

/** One change at a time, so that the audit log says what was meant. */
export const personChangeSchema = z.union([
  z.strictObject({ role: z.enum(roleNames) }),
  z.strictObject({ disabled: z.boolean() }),
]);
export type PersonChange = z.infer<typeof personChangeSchema>;

/** The password is answered once. */
export const personAddedSchema = z.strictObject({ id: z.string(), password: z.string() });
