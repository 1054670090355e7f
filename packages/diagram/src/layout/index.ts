export { type LayoutError, layoutSheet } from "./layout-sheet";
