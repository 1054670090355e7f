import { z } from "zod";

/** Where in the vehicle something sits, seen from above, front first: the fields of the component-place plan. */
export const zones = [
  "wheelFrontLeft",
  "engineBayFront",
  "wheelFrontRight",
  "engineBayLeft",
  "engine",
  "engineBayRight",
  "bulkheadLeft",
  "bulkheadRight",
  "dashLeft",
  "dashCentre",
  "dashRight",
  "column",
  "doorLeft",
  "cabinFloor",
  "doorRight",
  "rearSeat",
  "roof",
  "underbody",
  "wheelRearLeft",
  "boot",
  "wheelRearRight",
  "tailLeft",
  "tailCentre",
  "tailRight",
] as const;
export const zoneSchema = z.enum(zones);
export type Zone = (typeof zones)[number];
