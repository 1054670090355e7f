import type { z } from "zod";

/** What an author reads instead of the schema's own words; undefined leaves those. */
export function friendlyIssue(issue: z.core.$ZodRawIssue): string | undefined {
  const { input } = issue;
  const empty = input === undefined || input === null || input === "";
  switch (issue.code) {
    case "invalid_type":
      if (empty) return "Fill this in.";
      return issue.expected === "int" ? "Write a whole number." : `Write a ${issue.expected}.`;
    case "too_small":
      if (issue.origin === "string")
        return empty ? "Fill this in." : `Write at least ${issue.minimum} characters.`;
      if (issue.origin === "array") return "Add at least one.";
      return issue.inclusive === true ? `At least ${issue.minimum}.` : `More than ${issue.minimum}.`;
    case "too_big":
      if (issue.origin === "string") return `At most ${issue.maximum} characters.`;
      return `At most ${issue.maximum}.`;
    case "invalid_value":
      return empty ? "Choose one." : undefined;
    case "invalid_union":
      return "Write a number, or a range from a smaller to a larger one.";
    default:
      return undefined;
  }
}

/** The same for the words of a check that passes a schema's message on. */
export function friendlyMessage(message: string): string {
  if (/^Invalid input: expected \w+, received (undefined|null)$/.test(message)) return "Fill this in.";
  return message.charAt(0).toUpperCase() + message.slice(1) + (/[.?]$/.test(message) ? "" : ".");
}
