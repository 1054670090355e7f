import type { Position } from "@probeworthy/diagram";
import type { PointerEvent } from "react";

export type OnHover = (place: Position | undefined) => void;

/** Handlers that tell where on the sheet the pointer is. Paper has none: the server cannot send a function along. */
export const hoverHandlers = (onHover: OnHover) => ({
  onPointerMove: (event: PointerEvent<SVGGElement>) => {
    const box = event.currentTarget.ownerSVGElement?.getBoundingClientRect();
    if (box !== undefined) onHover({ x: event.clientX - box.left, y: event.clientY - box.top });
  },
  onPointerLeave: () => onHover(undefined),
});
