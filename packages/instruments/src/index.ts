export * from "./reading";
