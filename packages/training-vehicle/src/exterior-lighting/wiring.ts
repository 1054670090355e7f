import type { HarnessPart } from "../harness";
import { dashLighting } from "./dash";
import { frontLamps } from "./front";
import { lamps } from "./lamps";
import { tailLamps } from "./tail";
import { trailerSocket } from "./trailer";

/** Every part of the exterior lighting, from the light switch to the trailer socket. */
export const exteriorLighting: readonly HarnessPart[] = [
  { components: lamps },
  dashLighting,
  frontLamps,
  tailLamps,
  trailerSocket,
];
