"use client";

import { type RefObject, useEffect, useLayoutEffect, useRef, useState } from "react";

const smallest = 0.25;
const largest = 3;
const clamp = (zoom: number) => Math.min(largest, Math.max(smallest, zoom));

export interface Zoom {
  readonly zoom: number;
  readonly zoomBy: (factor: number) => void;
  readonly reset: () => void;
  readonly fit: (width: number) => void;
}

/**
 * Zoom of a scrolling viewport. The middle of the view (or the place under the wheel) stays where it is.
 * Wheel zooms only with Ctrl or Cmd held, so that a page can still be scrolled past the drawing.
 */
export function useZoom(viewport: RefObject<HTMLDivElement | null>): Zoom {
  const [zoom, setZoom] = useState(1);
  const current = useRef(1);
  const anchor = useRef<{ x: number; y: number; viewX: number; viewY: number } | undefined>(undefined);

  const change = (next: number, viewX?: number, viewY?: number) => {
    const element = viewport.current;
    if (element === null) return;
    const x = viewX ?? element.clientWidth / 2;
    const y = viewY ?? element.clientHeight / 2;
    const old = current.current;
    anchor.current = {
      x: (element.scrollLeft + x) / old,
      y: (element.scrollTop + y) / old,
      viewX: x,
      viewY: y,
    };
    current.current = clamp(next);
    setZoom(current.current);
  };
  const changeRef = useRef(change);
  changeRef.current = change;

  useLayoutEffect(() => {
    const element = viewport.current;
    const kept = anchor.current;
    if (element === null || kept === undefined) return;
    element.scrollLeft = kept.x * zoom - kept.viewX;
    element.scrollTop = kept.y * zoom - kept.viewY;
  }, [zoom, viewport]);

  useEffect(() => {
    const element = viewport.current;
    if (element === null) return;
    // React's own wheel listener is passive and could not keep the page from zooming.
    const onWheel = (event: WheelEvent) => {
      if (!event.ctrlKey && !event.metaKey) return;
      event.preventDefault();
      const box = element.getBoundingClientRect();
      const factor = Math.exp(-event.deltaY * 0.0015);
      changeRef.current(current.current * factor, event.clientX - box.left, event.clientY - box.top);
    };
    element.addEventListener("wheel", onWheel, { passive: false });
    return () => element.removeEventListener("wheel", onWheel);
  }, [viewport]);

  return {
    zoom,
    zoomBy: (factor) => change(current.current * factor),
    reset: () => change(1),
    fit: (width) => {
      const element = viewport.current;
      if (element !== null) change((element.clientWidth - 2) / width);
    },
  };
}
