export * from "./command";
export * from "./event";
export * from "./grade";
export * from "./rubric-presets";
export * from "./scenario";
export * from "./view";
