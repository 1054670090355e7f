import "@fontsource/ibm-plex-sans/400.css";
import "@fontsource/ibm-plex-sans/600.css";
import "@fontsource/ibm-plex-mono/400.css";
import "@fontsource/ibm-plex-mono/600.css";
import "./globals.css";
import type { Metadata, Viewport } from "next";
import { cookies } from "next/headers";
import type { ReactNode } from "react";
import { parseTheme, themeCookie } from "@/features/theme/theme";

export const metadata: Metadata = {
  title: { default: "Probeworthy", template: "%s · Probeworthy" },
  description: "Practise and assess electrical fault-finding on vehicles.",
  robots: { index: false },
};

export const viewport: Viewport = { colorScheme: "light dark" };

export default async function RootLayout({ children }: { readonly children: ReactNode }) {
  const theme = parseTheme((await cookies()).get(themeCookie)?.value);
  return (
    // The theme choice changes data-theme in the browser; React must not see that as a mistake.
    <html lang="en" {...(theme === "system" ? {} : { "data-theme": theme })} suppressHydrationWarning>
      <body>{children}</body>
    </html>
  );
}
