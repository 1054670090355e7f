export { type LayoutError, layoutSheet } from "./layout-sheet";
export { systemsOfConductors } from "./systems-of-conductors";
