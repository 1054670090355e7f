import type { Measured } from "./statistics-view";

/** "71 % (52 to 85)" or why not. */
export function ShareFigure({ share }: { readonly share: Measured }) {
  if (!share.known) return <span className="text-ink-soft">{share.why}</span>;
  const percent = (value: number) => Math.round(100 * value);
  return (
    <span className="whitespace-nowrap">
      <span className="font-mono font-semibold">{percent(share.value)} %</span>{" "}
      <span className="font-mono">
        ({percent(share.low)} to {percent(share.high)})
      </span>
    </span>
  );
}

/** "0.42 (−0.10 to 0.76)" or why not. */
export function CoefficientFigure({ coefficient }: { readonly coefficient: Measured }) {
  if (!coefficient.known) return <span className="text-ink-soft">{coefficient.why}</span>;
  return (
    <span className="whitespace-nowrap">
      <span className="font-mono font-semibold">{decimals(coefficient.value)}</span>{" "}
      <span className="font-mono">
        ({decimals(coefficient.low)} to {decimals(coefficient.high)})
      </span>
    </span>
  );
}

/** Two decimals with a true minus sign, and never "−0.00". */
export function decimals(value: number): string {
  const text = value.toFixed(2);
  return Number(text) === 0 ? "0.00" : text.replace("-", "−");
}
