export { starterContent } from "./content";
export { demoState, seedDemo } from "./demo";
export { demoSignIns } from "./people";
