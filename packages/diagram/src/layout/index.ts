export { type LayoutError, layoutDrawing, layoutSheet } from "./layout-sheet";
export { type BaseDrawing, dragOnDrawing, type Placements, placeOnDrawing } from "./place-on-drawing";
export { systemsOfConductors } from "./systems-of-conductors";
