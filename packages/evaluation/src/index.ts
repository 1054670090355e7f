export * from "./command";
export * from "./event";
export * from "./grade";
export * from "./scenario";
export * from "./view";
