import Link from "next/link";
import type { ReactNode } from "react";
import { buttonClass } from "@/components/button-class";
import { signOutAction } from "@/features/sign-in/sign-in-action";
import type { Theme } from "@/features/theme/theme";
import { ThemeChoice } from "@/features/theme/theme-choice";
import type { SessionUser } from "@/server/auth/session-user";
import { Mark } from "./mark";
import { homeOf, navigationOf } from "./navigation";
import { NavigationLinks } from "./navigation-links";
import { SheetFrame } from "./sheet-frame";
import { SkipLink } from "./skip-link";
import { UserMenu } from "./user-menu";

export interface ShellProps {
  readonly user: Pick<SessionUser, "name" | "email" | "role">;
  readonly theme: Theme;
  readonly children: ReactNode;
}

const roleLabels = {
  learner: "Learner",
  instructor: "Instructor",
  manager: "Manager",
  administrator: "Administrator",
} as const;

/** Frame, header and main landmark of every signed-in page. Pages put a <SheetPage> inside. */
export function Shell({ user, theme, children }: ShellProps) {
  return (
    <>
      <SkipLink />
      <SheetFrame>
        <header className="no-print flex flex-wrap items-stretch justify-between gap-x-2 border-b border-ink">
          <Link
            href={homeOf(user.role)}
            className="flex min-h-12 items-center gap-2 px-4 text-lg font-semibold hover:bg-panel sm:pl-8"
          >
            <Mark />
            Probeworthy
          </Link>
          <nav
            aria-label="Main"
            className="order-last w-full border-t border-hairline md:order-none md:w-auto md:flex-1 md:border-0"
          >
            <NavigationLinks items={navigationOf[user.role]} />
          </nav>
          <UserMenu name={user.name} roleLabel={roleLabels[user.role]}>
            <p className="truncate text-sm text-ink-soft">{user.email}</p>
            <ThemeChoice initial={theme} />
            <form action={signOutAction}>
              <button type="submit" className={`${buttonClass()} w-full`}>
                Sign out
              </button>
            </form>
          </UserMenu>
        </header>
        <main id="content" tabIndex={-1} className="flex min-w-0 flex-1 flex-col">
          {children}
        </main>
      </SheetFrame>
    </>
  );
}
