import { z } from "zod";
import { roleNames } from "./person-input";

export const peopleViewSchema = z.strictObject({
  people: z.array(
    z.strictObject({
      id: z.string(),
      name: z.string(),
      email: z.string(),
      role: z.enum(roleNames),
      disabledAt: z.string().nullable(),
      createdAt: z.string(),
      isSelf: z.boolean(),
    }),
  ),
});
export type PeopleView = z.infer<typeof peopleViewSchema>;
export type PersonLine = PeopleView["people"][number];
