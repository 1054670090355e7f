import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { problemCatalog, problemCodes } from "@/features/http/problem";
import { PlainSheet } from "@/features/shell/plain-sheet";

export const metadata: Metadata = { title: "Problem" };

/** Where the `type` of an RFC 9457 answer leads. */
export default async function ProblemPage({ params }: PageProps<"/problems/[code]">) {
  const asked = (await params).code;
  const code = problemCodes.find((known) => known === asked);
  if (code === undefined) notFound();
  const { title, advice, status } = problemCatalog[code];
  return (
    <PlainSheet
      entries={[
        { label: "Problem", value: code },
        { label: "Status", value: status },
      ]}
    >
      <h1>{title}</h1>
      <p className="mt-2 max-w-prose">{advice}</p>
    </PlainSheet>
  );
}
