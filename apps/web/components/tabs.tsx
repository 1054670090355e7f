"use client";

import { Tabs as Radix } from "radix-ui";
import type { ReactNode } from "react";

export interface TabItem {
  readonly value: string;
  readonly label: ReactNode;
  readonly content: ReactNode;
  /** Stays in the page while another tab is open, so that its zoom or search is still there afterwards. */
  readonly keepMounted?: boolean;
}

export interface TabsProps {
  /** Names the set of tabs for screen readers. */
  readonly label: string;
  readonly items: readonly TabItem[];
  readonly value?: string;
  readonly onValueChange?: (value: string) => void;
}

/** Index tabs along the top of a folder: the chosen one is open at the bottom and carries a copper edge. */
export function Tabs({ label, items, value, onValueChange }: TabsProps) {
  const first = items[0]?.value;
  return (
    <Radix.Root
      {...(value === undefined ? { defaultValue: first ?? "" } : { value })}
      {...(onValueChange === undefined ? {} : { onValueChange })}
    >
      <Radix.List aria-label={label} className="flex flex-wrap gap-1 border-b border-ink">
        {items.map((item) => (
          <Radix.Trigger
            key={item.value}
            value={item.value}
            className="-mb-px min-h-11 cursor-pointer rounded-t-sheet border border-transparent px-4 py-2 hover:bg-panel data-[state=active]:border-ink data-[state=active]:border-t-4 data-[state=active]:border-t-copper-fill data-[state=active]:border-b-paper data-[state=active]:bg-paper data-[state=active]:font-semibold"
          >
            {item.label}
          </Radix.Trigger>
        ))}
      </Radix.List>
      {items.map((item) => (
        <Radix.Content
          key={item.value}
          value={item.value}
          {...(item.keepMounted === true ? { forceMount: true as const } : {})}
          className="pt-4 data-[state=inactive]:hidden"
        >
          {item.content}
        </Radix.Content>
      ))}
    </Radix.Root>
  );
}
