"use client";

import clsx from "clsx";
import Link from "next/link";
import { usePathname } from "next/navigation";
import type { NavigationItem } from "./navigation";

export function NavigationLinks({ items }: { readonly items: readonly NavigationItem[] }) {
  const path = usePathname();
  return (
    <ul className="flex flex-wrap">
      {items.map((item) => {
        const here = path === item.href || path.startsWith(`${item.href}/`);
        return (
          <li key={item.href}>
            <Link
              href={item.href}
              aria-current={here ? (path === item.href ? "page" : "true") : undefined}
              className={clsx(
                "flex min-h-12 items-center border-b-4 px-3 pt-1 hover:bg-panel sm:px-4",
                here ? "border-copper-fill font-semibold" : "border-transparent",
              )}
            >
              {item.label}
            </Link>
          </li>
        );
      })}
    </ul>
  );
}
