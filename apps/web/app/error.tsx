"use client";

import { ErrorMessage } from "@/features/shell/error-message";
import { PlainSheet } from "@/features/shell/plain-sheet";

export default function ErrorPage({
  error,
  reset,
}: {
  error: Error & { digest?: string };
  reset: () => void;
}) {
  return (
    <PlainSheet entries={[{ label: "Sheet", value: "Not drawn" }]}>
      <ErrorMessage digest={error.digest} retry={reset} />
    </PlainSheet>
  );
}
