import { formatPath, type Path } from "./path";

/** A section that has just been opened is on the page some frames later. */
const frames = 30;

/** Goes to the field a path leads to as soon as its row is on the page. Answers what stops the waiting. */
export function jumpTo(path: Path): () => void {
  let left = frames;
  let request = 0;
  const look = () => {
    left -= 1;
    if (!focusPath(path, left > 0 ? Math.min(2, path.length) : 1) && left > 0)
      request = requestAnimationFrame(look);
  };
  request = requestAnimationFrame(look);
  return () => cancelAnimationFrame(request);
}

/** Puts the focus on the closest part of the page that carries the path or its beginning, of `least` parts or more. */
function focusPath(path: Path, least: number): boolean {
  for (let length = path.length; length >= least; length--) {
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
