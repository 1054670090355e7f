"use client";

import { useState } from "react";
import { Button } from "@/components/button";
import { Select } from "@/components/inputs";
import { useDraft, useDraftActions } from "../draft/draft-context";
import { insertAt } from "../draft/path";
import {
  type ComponentKind,
  componentKindNames,
  componentSpecs,
  isComponentKind,
} from "../fields/component-specs";
import { newComponent, recordsOf } from "../fields/new-record";

interface ComponentAdderProps {
  readonly onAdded: (index: number) => void;
  /** Without a choice: only this kind. */
  readonly only?: ComponentKind;
}

/** Chooses a kind and adds one of it; its form opens at once. */
export function ComponentAdder({ onAdded, only }: ComponentAdderProps) {
  const draft = useDraft();
  const { edit } = useDraftActions();
  const [kind, setKind] = useState<ComponentKind>(only ?? "battery");
  const count = recordsOf(draft, "components").length;
  const add = () => {
    edit(
      (before) => insertAt(before, ["components"], [newComponent(before, kind)]),
      `${componentSpecs[kind].title.toLowerCase()} added`,
    );
    onAdded(count);
  };
  return (
    <div className="flex flex-wrap items-center gap-3 pt-1 text-left">
      {only === undefined && (
        <Select
          aria-label="Kind of component"
          className="max-w-64"
          value={kind}
          onChange={(event) => {
            if (isComponentKind(event.target.value)) setKind(event.target.value);
          }}
        >
          {componentKindNames.map((name) => (
            <option key={name} value={name}>
              {componentSpecs[name].title}
            </option>
          ))}
        </Select>
      )}
      <Button onClick={add}>
        Add {only === undefined ? "component" : componentSpecs[only].title.toLowerCase()}
      </Button>
      {only === undefined && <span className="text-sm text-ink-soft">{componentSpecs[kind].about}</span>}
    </div>
  );
}
