export * from "./colours";
export * from "./connector-face";
export * from "./geometry";
export * from "./quality";
export * from "./text-size";
export * from "./zones";
export * from "./svg/drawing-to-svg";
