export { highestCount } from "./display";
export { meter } from "./meter";
export { type MeterAnswer, type MeterQuestion, type MeterRemark, readMeter } from "./read-meter";
export * from "./reading";
export { readScanTool } from "./scan-tool";
