"use client";

import type { Sheet, SheetSymbol } from "@probeworthy/diagram";
import { type KeyboardEvent, type PointerEvent, useMemo, useRef, useState } from "react";
import styles from "@/features/diagram/wiring-diagram.module.css";
import { DraftArt, HeldPart } from "./draft-art";
import { whatFollows } from "./following";

interface DraftDiagramProps {
  readonly sheet: Sheet;
  readonly zoom: number;
  /** Symbols the author has placed by hand. */
  readonly placed: readonly string[];
  /** A symbol was put down with its upper left corner here, in the drawing's own units. */
  readonly onPlace: (id: string, place: { x: number; y: number }) => void;
  readonly onReset: (id: string) => void;
  /** Enter or a double press: to the row of the component. */
  readonly onChoose: (id: string) => void;
}

interface Moving {
  readonly id: string;
  /** What it is moved on. The next sheet has the part where it was put down. */
  readonly sheet: Sheet;
  readonly isDown: boolean;
  readonly startX: number;
  readonly startY: number;
  readonly dx: number;
  readonly dy: number;
}

/** Steps of the arrow keys, and the grid a dragged symbol falls on, in the drawing's own units. */
const step = 10;
const onGrid = (value: number): number => Math.round(value / step) * step;
const arrows: Readonly<Record<string, readonly [number, number]>> = {
  ArrowUp: [0, -step],
  ArrowDown: [0, step],
  ArrowLeft: [-step, 0],
  ArrowRight: [step, 0],
};

/** A sheet whose symbols can be moved. Conductors are drawn after the hand, and routed anew where the part is put down. */
export function DraftDiagram({ sheet, zoom, placed, onPlace, onReset, onChoose }: DraftDiagramProps) {
  const [begun, setMoving] = useState<Moving>();
  const moving = begun?.sheet === sheet ? begun : undefined;
  const [active, setActive] = useState<string>();
  const svg = useRef<SVGSVGElement>(null);
  // Rails and the body metal are drawn, not placed.
  const movable = sheet.symbols.filter(({ kind }) => kind !== "rail" && kind !== "body");
  const tabStop = active ?? movable[0]?.id;
  const scale = () => (svg.current === null ? 1 : sheet.width / svg.current.getBoundingClientRect().width);
  const down = (symbol: SheetSymbol) => (event: PointerEvent<SVGGElement>) => {
    if (event.button !== 0) return;
    event.currentTarget.setPointerCapture(event.pointerId);
    setActive(symbol.id);
    setMoving({
      id: symbol.id,
      sheet,
      isDown: true,
      startX: event.clientX,
      startY: event.clientY,
      dx: 0,
      dy: 0,
    });
  };
  const move = (event: PointerEvent) => {
    if (moving?.isDown !== true) return;
    const factor = scale();
    setMoving({
      ...moving,
      dx: (event.clientX - moving.startX) * factor,
      dy: (event.clientY - moving.startY) * factor,
    });
  };
  const up = (symbol: SheetSymbol) => () => {
    if (moving?.isDown !== true) return;
    if (Math.hypot(moving.dx, moving.dy) < step / 2) return setMoving(undefined);
    const place = { x: onGrid(symbol.x + moving.dx), y: onGrid(symbol.y + moving.dy) };
    // It stays under the hand until the sheet with it in its new place has come.
    setMoving({ ...moving, isDown: false, dx: place.x - symbol.x, dy: place.y - symbol.y });
    onPlace(symbol.id, place);
  };
  const keys = (symbol: SheetSymbol) => (event: KeyboardEvent) => {
    const by = arrows[event.key];
    if (by !== undefined && event.altKey) onPlace(symbol.id, { x: symbol.x + by[0], y: symbol.y + by[1] });
    else if (by !== undefined) focusNext(svg.current, movable, symbol, event.key);
    else if (event.key === "Enter" || event.key === " ") onChoose(symbol.id);
    else if (event.key === "Delete") onReset(symbol.id);
    else return;
    event.preventDefault();
  };
  const heldId = moving?.id;
  const held = useMemo(() => sheet.symbols.find(({ id }) => id === heldId), [sheet, heldId]);
  const following = useMemo(() => (held === undefined ? undefined : whatFollows(sheet, held)), [sheet, held]);
  const shift = (id: string) => (moving?.id === id ? `translate(${moving.dx} ${moving.dy})` : undefined);
  return (
    // biome-ignore lint/a11y/useSemanticElements: a drawing with buttons in it has no HTML element of its own
    <svg
      ref={svg}
      className={styles.sheet}
      viewBox={`0 0 ${sheet.width} ${sheet.height}`}
      style={{ width: sheet.width * zoom, height: sheet.height * zoom }}
      role="group"
      aria-label={`${sheet.title}; arrow keys go from part to part, Alt and arrows move one, Delete puts it back`}
    >
      <DraftArt sheet={sheet} held={held} following={following} />
      {moving !== undefined && held !== undefined && following !== undefined && (
        <HeldPart symbol={held} following={following} dx={moving.dx} dy={moving.dy} />
      )}
      {movable.map((symbol) => {
        const isMoving = moving?.id === symbol.id;
        return (
          // biome-ignore lint/a11y/useSemanticElements: there is no button element inside SVG
          <g
            key={symbol.id}
            role="button"
            tabIndex={symbol.id === tabStop ? 0 : -1}
            data-symbol={symbol.id}
            aria-label={`${symbol.designator} ${symbol.title}${placed.includes(symbol.id) ? ", placed by hand" : ""}`}
            className="cursor-move touch-none outline-none focus-visible:[&>rect]:stroke-copper-fill"
            transform={shift(symbol.id)}
            onFocus={() => setActive(symbol.id)}
            onPointerDown={down(symbol)}
            onPointerMove={move}
            onPointerUp={up(symbol)}
            onPointerCancel={() => setMoving(undefined)}
            onDoubleClick={() => onChoose(symbol.id)}
            onKeyDown={keys(symbol)}
          >
            <rect
              x={symbol.x - 4}
              y={symbol.y - 4}
              width={symbol.width + 8}
              height={symbol.height + 8}
              className={isMoving ? "stroke-copper-fill" : "stroke-transparent hover:stroke-edge"}
              fill="transparent"
              strokeDasharray={isMoving ? "6 4" : undefined}
              strokeWidth={3}
            />
          </g>
        );
      })}
    </svg>
  );
}

/** The nearest symbol in the direction of an arrow key. */
function focusNext(
  svg: SVGSVGElement | null,
  symbols: readonly SheetSymbol[],
  from: SheetSymbol,
  key: string,
): void {
  const [dx, dy] = arrows[key] ?? [0, 0];
  const distance = (to: SheetSymbol) => {
    const ahead = ((to.x - from.x) * dx + (to.y - from.y) * dy) / step;
    const aside = Math.abs((to.x - from.x) * dy) + Math.abs((to.y - from.y) * dx);
    return ahead <= 0 ? Number.POSITIVE_INFINITY : ahead + (2 * aside) / step;
  };
  const [next] = symbols.filter((one) => one !== from).sort((one, other) => distance(one) - distance(other));
  if (next === undefined || !Number.isFinite(distance(next))) return;
  svg?.querySelector<SVGGElement>(`[data-symbol="${CSS.escape(next.id)}"]`)?.focus();
}
