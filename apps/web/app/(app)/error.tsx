"use client";

import { ErrorMessage } from "@/features/shell/error-message";
import { TitleBlock } from "@/features/shell/title-block";

export default function ErrorPage({
  error,
  reset,
}: {
  error: Error & { digest?: string };
  reset: () => void;
}) {
  return (
    <>
      <div className="flex-1 px-4 py-6 sm:px-8 sm:py-8">
        <ErrorMessage digest={error.digest} retry={reset} />
      </div>
      <TitleBlock entries={[{ label: "Sheet", value: "Not drawn" }]} />
    </>
  );
}
