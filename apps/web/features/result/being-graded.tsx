"use client";

import { useRouter } from "next/navigation";
import { useEffect } from "react";
import { EmptyState } from "@/components/empty-state";
import { ProgressLine } from "@/components/progress-line";

const lookAgainMilliseconds = 2000;

/** Stands in for the result until the grade is worked out, and looks again by itself. */
export function BeingGraded({ progress }: { readonly progress: number }) {
  const router = useRouter();
  useEffect(() => {
    const timer = setInterval(() => router.refresh(), lookAgainMilliseconds);
    return () => clearInterval(timer);
  }, [router]);
  return (
    <EmptyState title="Your report is being graded">
      <p>What your readings prove is being worked out. The result appears here in a few seconds.</p>
      <div className="mt-4">
        <ProgressLine label="Graded" fraction={progress} />
      </div>
    </EmptyState>
  );
}
