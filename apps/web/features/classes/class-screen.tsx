"use client";

import { useState } from "react";
import { Tabs } from "@/components/tabs";
import { AssignmentsTab } from "./assignments-tab";
import type { ClassView } from "./class-view";
import { GradebookTab } from "./gradebook-tab";
import { LearnersTab } from "./learners-tab";

export interface ClassScreenProps {
  readonly view: ClassView;
  readonly initialTab: "gradebook" | "learners" | "assignments";
}

export function ClassScreen({ view, initialTab }: ClassScreenProps) {
  const [tab, setTab] = useState<string>(initialTab);
  return (
    <Tabs
      label="Class"
      value={tab}
      onValueChange={setTab}
      items={[
        {
          value: "gradebook",
          label: "Gradebook",
          content: <GradebookTab classId={view.id} book={view.gradebook} />,
        },
        {
          value: "learners",
          label: `Learners (${view.roster.length})`,
          content: <LearnersTab classId={view.id} roster={view.roster} />,
        },
        {
          value: "assignments",
          label: `Assignments (${view.assignments.length})`,
          content: <AssignmentsTab classId={view.id} assignments={view.assignments} />,
        },
      ]}
    />
  );
}
