/** As a manual prints it: two decimals, a real minus, no negative zero. */
export function formatVolts(volts: number): string {
  const rounded = Math.abs(volts) < 0.005 ? 0 : volts;
  return `${rounded.toFixed(2).replace("-", "\u2212")} V`;
}

/** Three figures in Ω, kΩ or MΩ; beyond what a meter shows there is no path. */
export function formatOhms(ohms: number): string {
  if (!(ohms < 60e6)) return "OL";
  if (ohms >= 1e6) return `${threeFigures(ohms / 1e6)} MΩ`;
  if (ohms >= 1e3) return `${threeFigures(ohms / 1e3)} kΩ`;
  return ohms < 0.1 ? "below 0.1 Ω" : `${threeFigures(ohms)} Ω`;
}

function threeFigures(value: number): string {
  return value >= 100 ? value.toFixed(0) : value >= 10 ? value.toFixed(1) : value.toFixed(2);
}
