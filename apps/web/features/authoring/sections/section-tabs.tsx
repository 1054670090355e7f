"use client";

import { Tabs as Radix } from "radix-ui";
import type { ReactNode } from "react";
import type { TabItem } from "@/components/tabs";

interface SectionTabsProps {
  readonly label: string;
  readonly items: readonly TabItem[];
  readonly value: string;
  readonly onValueChange: (value: string) => void;
  /** Stays in view whatever section is open. */
  readonly beside: ReactNode;
}

/** Index tabs over the whole width of the sheet, with something that stays beside their contents. */
export function SectionTabs({ label, items, value, onValueChange, beside }: SectionTabsProps) {
  return (
    <Radix.Root value={value} onValueChange={onValueChange}>
      <Radix.List aria-label={label} className="mb-4 flex flex-wrap gap-x-1 border-b border-ink">
        {items.map((item) => (
          <Radix.Trigger
            key={item.value}
            value={item.value}
            className="-mb-px min-h-11 cursor-pointer rounded-t-sheet border border-transparent px-3 py-2 hover:bg-panel data-[state=active]:border-ink data-[state=active]:border-t-4 data-[state=active]:border-t-copper-fill data-[state=active]:border-b-paper data-[state=active]:bg-paper data-[state=active]:font-semibold"
          >
            {item.label}
          </Radix.Trigger>
        ))}
      </Radix.List>
      <div className="grid items-start gap-8 xl:grid-cols-[minmax(0,1fr)_minmax(24rem,34rem)]">
        <div className="min-w-0">
          {items.map((item) => (
            <Radix.Content key={item.value} value={item.value}>
              {item.content}
            </Radix.Content>
          ))}
        </div>
        {beside}
      </div>
    </Radix.Root>
  );
}
