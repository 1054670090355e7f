"use client";

import { type PointerEvent, type RefObject, useRef, useState } from "react";

/** Pixels a press may wander before it counts as dragging the sheet and not as a click. */
const threshold = 5;

/** Lets the mouse drag a scrolling viewport; touch already scrolls it by itself. */
export function useDrag(viewport: RefObject<HTMLDivElement | null>) {
  const start = useRef<{ x: number; y: number; left: number; top: number } | undefined>(undefined);
  // The click that follows a drag comes after the release: it is still part of the drag.
  const wasDragged = useRef(false);
  const [isDragging, setDragging] = useState(false);
  const end = () => {
    start.current = undefined;
    setDragging(false);
  };
  return {
    isDragging,
    wasDragged,
    handlers: {
      onPointerDown: (event: PointerEvent) => {
        const element = viewport.current;
        if (element === null || event.pointerType !== "mouse" || event.button !== 0) return;
        wasDragged.current = false;
        start.current = {
          x: event.clientX,
          y: event.clientY,
          left: element.scrollLeft,
          top: element.scrollTop,
        };
      },
      onPointerMove: (event: PointerEvent) => {
        const element = viewport.current;
        const from = start.current;
        if (element === null || from === undefined) return;
        if (event.buttons === 0) return end();
        const dx = event.clientX - from.x;
        const dy = event.clientY - from.y;
        if (!isDragging && Math.hypot(dx, dy) < threshold) return;
        wasDragged.current = true;
        if (!isDragging) setDragging(true);
        element.scrollLeft = from.left - dx;
        element.scrollTop = from.top - dy;
      },
      onPointerUp: end,
      onPointerLeave: end,
    },
  };
}
