"use client";

import { type RefObject, useEffect, useLayoutEffect, useRef, useState } from "react";

const smallest = 0.15;
const largest = 3;
const clamp = (zoom: number) => Math.min(largest, Math.max(smallest, zoom));

export interface Zoom {
  readonly zoom: number;
  readonly zoomBy: (factor: number) => void;
  readonly reset: () => void;
  readonly fit: (width: number, height?: number) => void;
}

/** Distance and middle of two fingers. */
const spread = (touches: TouchList): { length: number; x: number; y: number } | undefined => {
  const [one, other] = [touches[0], touches[1]];
  if (one === undefined || other === undefined) return undefined;
  return {
    length: Math.hypot(one.clientX - other.clientX, one.clientY - other.clientY),
    x: (one.clientX + other.clientX) / 2,
    y: (one.clientY + other.clientY) / 2,
  };
};

/**
 * Zoom of a scrolling viewport. The middle of the view (or the place under the wheel) stays where it is.
 * Wheel zooms only with Ctrl or Cmd held, so that a page can still be scrolled past the drawing.
 */
export function useZoom(viewport: RefObject<HTMLDivElement | null>, start = 1): Zoom {
  const [zoom, setZoom] = useState(start);
  const current = useRef(start);
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
    // Two fingers zoom the sheet, not the page; one finger scrolls it as it would scroll anything.
    let held: { length: number; zoom: number } | undefined;
    const onTouchStart = (event: TouchEvent) => {
      const fingers = spread(event.touches);
      held = fingers && { length: fingers.length, zoom: current.current };
    };
    const onTouchMove = (event: TouchEvent) => {
      const fingers = spread(event.touches);
      if (fingers === undefined || held === undefined || held.length === 0) return;
      event.preventDefault();
      const box = element.getBoundingClientRect();
      const next = (held.zoom * fingers.length) / held.length;
      changeRef.current(next, fingers.x - box.left, fingers.y - box.top);
    };
    element.addEventListener("wheel", onWheel, { passive: false });
    element.addEventListener("touchstart", onTouchStart, { passive: true });
    element.addEventListener("touchmove", onTouchMove, { passive: false });
    return () => {
      element.removeEventListener("wheel", onWheel);
      element.removeEventListener("touchstart", onTouchStart);
      element.removeEventListener("touchmove", onTouchMove);
    };
  }, [viewport]);

  return {
    zoom,
    zoomBy: (factor) => change(current.current * factor),
    reset: () => change(1),
    fit: (width, height) => {
      const element = viewport.current;
      if (element === null) return;
      const byWidth = (element.clientWidth - 2) / width;
      const top = Number.parseFloat(getComputedStyle(element).maxHeight);
      const room = Number.isFinite(top) ? top : element.clientHeight;
      change(height === undefined ? byWidth : Math.min(byWidth, (room - 2) / height));
    },
  };
}
