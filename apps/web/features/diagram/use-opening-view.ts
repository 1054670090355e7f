"use client";

import type { Sheet } from "@probeworthy/diagram";
import { type RefObject, useEffect, useRef } from "react";
import { boxOf, type SheetMark } from "./sheet-marks";

interface Place {
  readonly x: number;
  readonly y: number;
}

/** Where to look first: at a lead already placed, else at the largest control module, else at the middle of the sheet. */
export function openingPlace(sheet: Sheet, lead: string | undefined): Place {
  const placed = sheet.testPoints.find((point) => point.pointId === lead);
  if (placed !== undefined) return { x: placed.x, y: placed.y };
  const [module] = sheet.symbols
    .filter((symbol) => symbol.kind === "module")
    .sort((a, b) => b.width * b.height - a.width * a.height);
  return module === undefined
    ? { x: sheet.width / 2, y: sheet.height / 2 }
    : { x: module.x + module.width / 2, y: module.y + module.height / 2 };
}

/** How a sheet was looked at last. */
export interface SeenPlace {
  readonly zoom: number;
  readonly left: number;
  readonly top: number;
}

/** Brings what was jumped to into the middle of the view, once for every jump. */
export function useMarkInView(
  viewport: RefObject<HTMLDivElement | null>,
  sheet: Sheet,
  mark: SheetMark | undefined,
  zoom: number,
) {
  const seen = useRef<SheetMark | undefined>(undefined);
  useEffect(() => {
    const element = viewport.current;
    if (element === null || mark === undefined || seen.current === mark) return;
    const box = boxOf(sheet, mark.id);
    if (box === undefined) return;
    seen.current = mark;
    element.scrollLeft = (box.x + box.width / 2) * zoom - element.clientWidth / 2;
    element.scrollTop = (box.y + box.height / 2) * zoom - element.clientHeight / 2;
  }, [viewport, sheet, mark, zoom]);
}

/** Centres the opening place once the viewport has a size: it has none while another tab of the page hides it. */
export function useOpeningView(
  viewport: RefObject<HTMLDivElement | null>,
  sheet: Sheet,
  lead: string | undefined,
  seen: SeenPlace | undefined,
) {
  const kept = useRef(seen);
  const opening = useRef<Place | undefined>(openingPlace(sheet, lead));
  useEffect(() => {
    const element = viewport.current;
    if (element === null || opening.current === undefined) return;
    const observer = new ResizeObserver(() => {
      const place = opening.current;
      if (place === undefined || element.clientWidth === 0) return;
      element.scrollLeft = kept.current?.left ?? place.x - element.clientWidth / 2;
      element.scrollTop = kept.current?.top ?? place.y - element.clientHeight / 2;
      opening.current = undefined;
      observer.disconnect();
    });
    observer.observe(element);
    return () => observer.disconnect();
  }, [viewport]);
}

/** Brings a lead into view when it was placed from elsewhere (the list, a connector face); a visible one moves nothing. */
export function useLeadInView(
  viewport: RefObject<HTMLDivElement | null>,
  sheet: Sheet,
  lead: string | undefined,
  zoom: number,
) {
  const seen = useRef(lead);
  useEffect(() => {
    const element = viewport.current;
    if (element === null || seen.current === lead) return;
    seen.current = lead;
    const point = sheet.testPoints.find((candidate) => candidate.pointId === lead);
    if (point === undefined) return;
    const [x, y] = [point.x * zoom - element.scrollLeft, point.y * zoom - element.scrollTop];
    if (x >= 0 && y >= 0 && x <= element.clientWidth && y <= element.clientHeight) return;
    element.scrollLeft += x - element.clientWidth / 2;
    element.scrollTop += y - element.clientHeight / 2;
  }, [viewport, sheet, lead, zoom]);
}
