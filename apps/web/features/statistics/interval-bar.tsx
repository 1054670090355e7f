import type { Measured } from "./statistics-view";

const width = 200;

/**
 * A share on a scale from none to all: a line over its interval, a bar across where the share lies. The figures stand
 * beside it as text, so the drawing says nothing of its own to a screen reader.
 */
export function IntervalBar({ share }: { readonly share: Measured }) {
  if (!share.known) return null;
  const at = (value: number) => 4 + value * (width - 8);
  return (
    <svg
      viewBox={`0 0 ${width} 24`}
      className="block h-6 w-50 text-ink"
      aria-hidden="true"
      focusable="false"
      fill="none"
      stroke="currentColor"
    >
      <path d={`M${at(0)} 20H${at(1)}`} strokeWidth="1" />
      {[0, 0.25, 0.5, 0.75, 1].map((mark) => (
        <path key={mark} d={`M${at(mark)} 17V23`} strokeWidth="1" />
      ))}
      <path d={`M${at(share.low)} 9H${at(share.high)}`} strokeWidth="2" />
      <path d={`M${at(share.low)} 5V13M${at(share.high)} 5V13`} strokeWidth="2" />
      <path d={`M${at(share.value)} 2V16`} strokeWidth="4" className="text-copper" stroke="currentColor" />
    </svg>
  );
}
