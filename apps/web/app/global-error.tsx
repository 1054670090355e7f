"use client";

import "./globals.css";
import { ErrorMessage } from "@/features/shell/error-message";

/** Stands in for the whole document when even the layout failed. */
export default function GlobalError({
  error,
  reset,
}: {
  error: Error & { digest?: string };
  reset: () => void;
}) {
  return (
    <html lang="en">
      <body>
        <title>Probeworthy</title>
        <main className="p-8">
          <ErrorMessage digest={error.digest} retry={reset} />
        </main>
      </body>
    </html>
  );
}
