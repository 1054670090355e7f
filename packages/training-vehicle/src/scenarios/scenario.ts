import type { FaultTemplate, ScenarioDocument } from "@probeworthy/evaluation";
import { powerSteeringSystem } from "../service-information/power-steering";

type Candidate = ScenarioDocument["pool"][number];
type Told = Pick<
  ScenarioDocument,
  "id" | "title" | "level" | "learningGoal" | "instructorNote" | "complaints" | "pool" | "par"
>;

/** A starter scenario about any system of the car: the told part, with the usual instruments, limits and weights. */
export const carScenario = (system: string, told: Told & Partial<ScenarioDocument>): ScenarioDocument => ({
  format: "probeworthy-scenario-1",
  vehicle: "brambling-12",
  system,
  startConditions: { key: "off", engineSpeed: 0, roadSpeed: 0, steeringEffort: 0 },
  instruments: ["volts", "ohms", "continuity", "amps", "codes", "liveData"],
  limits: { shopMinutes: 90, actions: 150 },
  requirePrediction: false,
  weights: { cause: 40, method: 25, safety: 10, efficiency: 15, report: 10 },
  passMark: 70,
  ...told,
});

export const steeringScenario = (told: Told & Partial<ScenarioDocument>): ScenarioDocument =>
  carScenario(powerSteeringSystem.id, told);

/** Nothing is wrong: the behaviour that surprised the customer is the design. */
export const nothingWrong = (id: string, title: string): Candidate => ({
  id,
  title,
  weight: 1,
  faults: [],
  normal: true,
});

/** One possible cause. `id` names it in the tests and in the instructor's list. */
export const candidate = (
  id: string,
  title: string,
  weight: number,
  ...faults: FaultTemplate[]
): Candidate => ({ id, title, weight, faults });

export const open = (at: string): FaultTemplate => ({ kind: "open", at });

/** Resistance drawn evenly over decades, because 0.1 to 0.2 Ω matters as much as 1 to 2 Ω. */
export const resistance = (at: string, from: number, to: number): FaultTemplate => ({
  kind: "seriesResistance",
  at,
  ohms: { from, to, spread: "log" },
});

export const shortToGround = (at: string, from: number, to: number): FaultTemplate => ({
  kind: "shortToGround",
  at,
  ohms: { from, to, spread: "log" },
});

/** A contact or conductor that opens only while a stretch of the harness is moved by hand. */
export const opensWhenMoved = (at: string, is: string): FaultTemplate => ({
  kind: "intermittent",
  at,
  ohms: 1e9,
  condition: "harnessMoved",
  is,
});

export const fuseBlown = (component: string): FaultTemplate => ({ kind: "fuseBlown", component });

export const backedOut = (at: string): FaultTemplate => ({ kind: "backedOut", at });

/** Verdigris on every contact of a connector. */
export const corroded = (connector: string, from: number, to: number): FaultTemplate => ({
  kind: "corroded",
  connector,
  ohms: { from, to, spread: "log" },
});
