export * from "./colours";
export * from "./connector-face";
export * from "./geometry";
export * from "./place-plan";
export * from "./quality";
export * from "./svg/drawing-to-svg";
export * from "./text-size";
export * from "./zones";
