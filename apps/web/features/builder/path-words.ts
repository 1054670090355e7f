const words: Readonly<Record<string, string>> = {
  title: "Title",
  system: "System",
  level: "Level",
  learningGoal: "Learning goal",
  instructorNote: "Your note",
  complaints: "Wording",
  pool: "Candidate",
  faults: "fault",
  kind: "kind",
  at: "place",
  supply: "supply",
  other: "other place",
  component: "component",
  terminal: "terminal",
  channel: "sensor output",
  connector: "connector",
  conductor: "conductor",
  output: "output",
  value: "value",
  first: "first cavity",
  second: "second cavity",
  condition: "condition",
  is: "position",
  weight: "weight",
  startConditions: "Start",
  instruments: "Instruments",
  "limits.shopMinutes": "Shop time allowed",
  "limits.actions": "Actions allowed",
  "par.shopMinutes": "Par, minutes",
  "par.readings": "Par, readings",
  weights: "Weights",
  passMark: "Pass mark",
  vehicle: "Vehicle",
};

/** `pool.0.faults.1.at` as `Candidate 1, fault 2, place`. */
export function pathWords(path: string): string {
  const whole = words[path];
  if (whole !== undefined) return whole;
  const parts: string[] = [];
  for (const part of path.split(".")) {
    const last = parts.length - 1;
    if (/^\d+$/.test(part) && last >= 0) parts[last] = `${parts[last]} ${Number(part) + 1}`;
    else parts.push(words[part] ?? part);
  }
  return parts.join(", ");
}
