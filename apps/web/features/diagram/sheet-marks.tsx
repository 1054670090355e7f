import type { Box, Sheet } from "@probeworthy/diagram";
import styles from "./wiring-diagram.module.css";

/** What a search or a reference has led to. `count` tells one jump to a thing from the next one to the same. */
export interface SheetMark {
  readonly id: string;
  readonly count: number;
}

/** Where a designator is drawn on a sheet; a conductor at the first place its code is printed. */
export function boxOf(sheet: Sheet, id: string): Box | undefined {
  const symbol = sheet.symbols.find((one) => one.designator === id || one.id === id);
  if (symbol !== undefined) return symbol;
  const connector = sheet.connectors.find((one) => one.id === id);
  if (connector !== undefined) {
    const { from, to } = connector;
    return { x: from.x - 36, y: from.y - 14, width: to.x - from.x + 42, height: 28 };
  }
  const conductor = sheet.conductors.find((one) => one.id === id);
  const label = conductor?.labels[0] ?? conductor?.points[0];
  return label === undefined ? undefined : { x: label.x - 16, y: label.y - 18, width: 48, height: 28 };
}

/** A heavy frame around what was looked for. */
export function MarkFrame({ sheet, mark }: { readonly sheet: Sheet; readonly mark: SheetMark }) {
  const box = boxOf(sheet, mark.id);
  if (box === undefined) return null;
  return (
    <rect
      x={box.x - 8}
      y={box.y - 8}
      width={Math.max(24, box.width) + 16}
      height={Math.max(24, box.height) + 16}
      className={styles.mark}
      data-mark={mark.id}
    />
  );
}
