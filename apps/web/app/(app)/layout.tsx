import { cookies } from "next/headers";
import type { ReactNode } from "react";
import { Shell } from "@/features/shell/shell";
import { parseTheme, themeCookie } from "@/features/theme/theme";
import { requireUser } from "@/server/auth/require-user";

export default async function AppLayout({ children }: { readonly children: ReactNode }) {
  const user = await requireUser();
  const theme = parseTheme((await cookies()).get(themeCookie)?.value);
  return (
    <Shell user={user} theme={theme}>
      {children}
    </Shell>
  );
}
