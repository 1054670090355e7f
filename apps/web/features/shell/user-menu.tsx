"use client";

import { type ReactNode, useEffect, useRef } from "react";
import { Icon } from "@/components/icon";

export interface UserMenuProps {
  readonly name: string;
  readonly roleLabel: string;
  readonly children: ReactNode;
}

/** A native disclosure, so it opens without JavaScript; with it, Escape and a click elsewhere close it. */
export function UserMenu({ name, roleLabel, children }: UserMenuProps) {
  const details = useRef<HTMLDetailsElement>(null);

  useEffect(() => {
    const close = () => details.current?.removeAttribute("open");
    const onPointer = (event: PointerEvent) => {
      if (event.target instanceof Node && details.current?.contains(event.target) === false) close();
    };
    const onKey = (event: KeyboardEvent) => {
      if (event.key !== "Escape" || details.current?.open !== true) return;
      close();
      details.current.querySelector("summary")?.focus();
    };
    document.addEventListener("pointerdown", onPointer);
    document.addEventListener("keydown", onKey);
    return () => {
      document.removeEventListener("pointerdown", onPointer);
      document.removeEventListener("keydown", onKey);
    };
  }, []);

  return (
    <details ref={details} className="group relative">
      <summary className="flex min-h-12 cursor-pointer list-none items-center gap-2 px-3 hover:bg-panel [&::-webkit-details-marker]:hidden">
        <span className="text-right leading-tight">
          <span className="block max-w-48 truncate font-semibold">{name}</span>
          <span className="label-small block">{roleLabel}</span>
        </span>
        <Icon name="chevron" className="size-4 group-open:rotate-180" />
      </summary>
      <div className="absolute right-0 z-30 w-60 space-y-3 border border-ink bg-paper p-4">{children}</div>
    </details>
  );
}
