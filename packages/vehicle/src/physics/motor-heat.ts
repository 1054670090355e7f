import type { ComponentOf } from "../document/component";

export { advanceMotorHeat, type MotorTemperatures } from "@probeworthy/circuit";

export type MotorHeat = ComponentOf<"motor">["heat"];
