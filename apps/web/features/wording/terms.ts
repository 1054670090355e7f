/** Words for the terms of an assignment, the same on every staff screen. */
export const modeWords = { practice: "Practice", test: "Test", check: "Skills check" } as const;

export const revealWords = {
  after_submission: "As soon as the report is in",
  after_close: "When the work closes for everybody",
  never: "Not at all",
} as const;

export const rubricWords = {
  cause: "Cause",
  method: "Method",
  safety: "Safety",
  efficiency: "Efficiency",
  report: "Report",
} as const;

export const presetWords = {
  practice: "Practice",
  collegeTest: "College test",
  skillCheck: "Skills check",
} as const;

export const levelWords = {
  starter: "Starter",
  intermediate: "Intermediate",
  advanced: "Advanced",
} as const;

export const instrumentWords = {
  volts: "Volts",
  ohms: "Ohms",
  continuity: "Continuity",
  amps: "Amps, 10 A input",
  codes: "Fault codes",
  liveData: "Live data",
} as const;

export const roleWords = {
  learner: "Learner",
  instructor: "Instructor",
  manager: "Manager",
  administrator: "Administrator",
} as const;

/** `1 learner`, `3 learners`. */
export const count = (number: number, one: string, many = `${one}s`): string =>
  `${number} ${number === 1 ? one : many}`;
