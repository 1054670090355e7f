import clsx from "clsx";
import type { KeyboardEvent } from "react";
import type { Target } from "./targets";
import styles from "./wiring-diagram.module.css";

export interface TargetButtonProps {
  readonly target: Target;
  readonly isSelected: boolean;
  readonly isApart: boolean;
  /** Exactly one target of a sheet is in the tab order; the arrow keys move between them. */
  readonly isTabStop: boolean;
  /** By pointer or by key: a pointer may have been dragging the sheet. */
  readonly onPress: (isPointer: boolean) => void;
  readonly onFocus: () => void;
  readonly onName: (isShown: boolean) => void;
  readonly onKeyDown: (event: KeyboardEvent) => void;
}

/** A test point, a connector's handle or a fuse: a real button as far as keys and screen readers are concerned. */
export function TargetButton({
  target,
  isSelected,
  isApart,
  isTabStop,
  onPress,
  onFocus,
  onName,
  onKeyDown,
}: TargetButtonProps) {
  const { x, y, half, kind } = target;
  const box = { x: x - half.x, y: y - half.y, width: 2 * half.x, height: 2 * half.y };
  const isClosed = target.reason !== undefined;
  return (
    // biome-ignore lint/a11y/useSemanticElements: there is no button element inside SVG
    <g
      role="button"
      tabIndex={isTabStop ? 0 : -1}
      aria-label={isClosed ? `${target.name}. ${target.reason}` : target.name}
      aria-disabled={isClosed || undefined}
      aria-pressed={kind === "point" ? isSelected : undefined}
      data-target={target.key}
      className={clsx(
        styles.target,
        isSelected && styles.selected,
        isApart && kind === "connector" && styles.handleApart,
      )}
      onClick={() => onPress(true)}
      onKeyDown={(event) => {
        if (event.key === "Enter" || event.key === " ") {
          event.preventDefault();
          onPress(false);
        } else onKeyDown(event);
      }}
      onFocus={() => {
        onFocus();
        onName(true);
      }}
      onBlur={() => onName(false)}
      onPointerEnter={() => onName(true)}
      onPointerLeave={() => onName(false)}
    >
      {kind === "connector" ? (
        <>
          <rect {...box} className={styles.handleBox} rx={2} />
          <text x={x} y={y + 4} textAnchor="middle" className={styles.terminal}>
            {target.id}
          </text>
        </>
      ) : (
        <rect {...box} className={kind === "reference" ? styles.reference : styles.hit} />
      )}
      {kind === "point" && <circle cx={x} cy={y} r={isClosed ? 4 : 5} className={styles.dot} />}
      {kind === "point" ? (
        <circle cx={x} cy={y} r={12} className={styles.ring} />
      ) : (
        <rect
          x={box.x - 4}
          y={box.y - 4}
          width={box.width + 8}
          height={box.height + 8}
          className={styles.ring}
        />
      )}
    </g>
  );
}
