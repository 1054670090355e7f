import { formatPath, type Path } from "./path";

/** Puts the focus on the field a message is about: the closest part of the page that carries its path or the beginning. */
export function focusPath(path: Path): boolean {
  for (let length = path.length; length > 0; length--) {
    const text = formatPath(path.slice(0, length));
    const place = document.querySelector(`[data-path="${CSS.escape(text)}"]`);
    if (place === null) continue;
    for (let folded = place.closest("details"); folded !== null; ) {
      folded.open = true;
      folded = folded.parentElement?.closest("details") ?? null;
    }
    place.scrollIntoView({ block: "center" });
    const control = place.querySelector<HTMLElement>("input, select, textarea, button, summary");
    control?.focus({ preventScroll: true });
    return control !== null;
  }
  return false;
}
