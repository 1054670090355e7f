const letters = ["P", "C", "B", "U"] as const;

/**
 * Fault code from its two bytes (SAE J2012): the top two bits give the letter, the next two the first digit, the rest
 * three hexadecimal digits; an optional third byte is the failure type. `[0x96, 0xA1]` → `B16A1`. Bytes 0 to 255.
 */
export function faultCodeFromBytes(high: number, low: number, failureType?: number): string {
  const hex = (value: number, digits: number): string =>
    value.toString(16).toUpperCase().padStart(digits, "0");
  const body = `${letters[high >> 6]}${(high >> 4) & 3}${hex(high & 15, 1)}${hex(low, 2)}`;
  return failureType === undefined ? body : `${body}-${hex(failureType, 2)}`;
}
