"use client";

import { type Theme, themeCookie, themes } from "./theme";

const labels: Record<Theme, string> = { system: "As the device", light: "Light", dark: "Dark" };
const oneYear = 365 * 24 * 60 * 60;

export function ThemeChoice({ initial }: { readonly initial: Theme }) {
  return (
    <fieldset>
      <legend className="label-small">Colours</legend>
      {themes.map((theme) => (
        <label key={theme} className="flex min-h-11 cursor-pointer items-center gap-3">
          <input
            type="radio"
            name="theme"
            value={theme}
            defaultChecked={theme === initial}
            onChange={() => applyTheme(theme)}
            className="size-5"
          />
          {labels[theme]}
        </label>
      ))}
    </fieldset>
  );
}

function applyTheme(theme: Theme): void {
  // biome-ignore lint/suspicious/noDocumentCookie: the Cookie Store API is missing in browsers still used on shop tablets
  document.cookie = `${themeCookie}=${theme}; Path=/; Max-Age=${oneYear}; SameSite=Lax`;
  if (theme === "system") delete document.documentElement.dataset.theme;
  else document.documentElement.dataset.theme = theme;
}
