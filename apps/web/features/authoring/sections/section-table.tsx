"use client";

import { Button } from "@/components/button";
import { useDraft, useDraftActions } from "../draft/draft-context";
import { insertAt } from "../draft/path";
import { newCondition, newRecord, recordsOf } from "../fields/new-record";
import { fuseColumns, type SectionName, sectionSpecs } from "../fields/section-specs";
import { RecordTable } from "../table/record-table";
import { ComponentAdder } from "./component-adder";

export interface OpenRows {
  readonly open: Readonly<Partial<Record<SectionName, number | undefined>>>;
  readonly onOpen: (section: SectionName, index: number | undefined) => void;
}

interface SectionTableProps extends OpenRows {
  readonly section: SectionName;
  readonly fusesOnly?: boolean;
}

/** The table of one list of the document with what adds to it. */
export function SectionTable({ section, fusesOnly = false, open, onOpen }: SectionTableProps) {
  const { title } = sectionSpecs[section];
  return (
    <RecordTable
      section={section}
      caption={fusesOnly ? "Fuses and ratings" : title}
      open={open[section]}
      onOpen={(index) => onOpen(section, index)}
      showKind={!fusesOnly && (section === "components" || section === "conditions")}
      {...(fusesOnly ? { columns: fuseColumns, only: "fuse" } : {})}
      adder={<Adder section={section} fusesOnly={fusesOnly} onAdded={(index) => onOpen(section, index)} />}
    />
  );
}

interface AdderProps {
  readonly section: SectionName;
  readonly fusesOnly: boolean;
  readonly onAdded: (index: number) => void;
}

function Adder({ section, fusesOnly, onAdded }: AdderProps) {
  const draft = useDraft();
  const { edit } = useDraftActions();
  const { item, fields } = sectionSpecs[section];
  const count = recordsOf(draft, section).length;
  if (section === "components")
    return <ComponentAdder onAdded={onAdded} {...(fusesOnly ? { only: "fuse" as const } : {})} />;
  if (section === "conditions") {
    const add = (kind: "choice" | "number") => {
      edit((before) => insertAt(before, ["conditions"], [newCondition(before, kind)]), "condition added");
      onAdded(count);
    };
    return (
      <div className="flex flex-wrap justify-center gap-3 pt-1 sm:justify-start">
        <Button onClick={() => add("choice")}>Add a choice</Button>
        <Button onClick={() => add("number")}>Add a number</Button>
      </div>
    );
  }
  return (
    <Button
      onClick={() => {
        edit((before) => insertAt(before, [section], [newRecord(before, section)]), `${item} added`);
        if (fields.length > 0) onAdded(count);
      }}
    >
      Add {item}
    </Button>
  );
}
