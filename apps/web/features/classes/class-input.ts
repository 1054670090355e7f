import { z } from "zod";

export const classInputSchema = z.strictObject({
  title: z
    .string()
    .trim()
    .min(2, "Write a name of at least 2 characters.")
    .max(120, "At most 120 characters."),
  term: z
    .string()
    .trim()
    .min(1, "Write the term, for example Spring 2027.")
    .max(60, "At most 60 characters."),
});

/** What the server says about each line of a list of people. */
export const enrolAnswerSchema = z.strictObject({
  people: z.array(
    z.strictObject({
      email: z.string(),
      name: z.string(),
      outcome: z.enum(["enrolled", "already_enrolled", "account_made", "refused"]),
      /** Only for an account made just now, and never again. */
      password: z.string().optional(),
      message: z.string().optional(),
    }),
  ),
});
export type EnrolAnswer = z.infer<typeof enrolAnswerSchema>;

export const personLineSchema = z.strictObject({
  email: z.email("is not an e-mail address").max(320),
  name: z.string().trim().max(120),
});
export type PersonLine = z.infer<typeof personLineSchema>;

export const enrolInputSchema = z.strictObject({ people: z.array(personLineSchema).min(1).max(200) });

export type ParsedPeople =
  | { readonly ok: true; readonly people: PersonLine[] }
  | { readonly ok: false; readonly problems: string[] };

/**
 * Reads one person a line as people paste them from a mail or a spreadsheet: `name, address`, `address, name`,
 * `Name <address>`, tabs or semicolons instead of commas. The part with the @ is the address.
 */
export function parsePeople(text: string): ParsedPeople {
  const people: PersonLine[] = [];
  const problems: string[] = [];
  for (const [index, line] of text.split(/\r?\n/).entries()) {
    if (line.trim() === "") continue;
    const parts = line
      .split(/[,;\t<>"]/)
      .map((part) => part.trim())
      .filter((part) => part !== "");
    const email =
      parts.find((part) => part.includes("@")) ??
      parts.flatMap((part) => part.split(/\s+/)).find((part) => part.includes("@")) ??
      "";
    const name = parts.filter((part) => part !== email).join(" ");
    const parsed = personLineSchema.safeParse({ email: email.toLowerCase(), name });
    if (parsed.success) people.push(parsed.data);
    else problems.push(`Line ${index + 1}: "${line.trim()}" has no e-mail address that can be used.`);
  }
  return problems.length === 0 ? { ok: true, people } : { ok: false, problems };
}
