import { rubricLines } from "@probeworthy/evaluation";
import { faultForms, isFaultKind, type NumberFieldName, numberFields, textFields } from "./fault-forms";

/** A number as the form holds it: null while empty, text while it is no number yet. */
export type FormNumber = number | string | null;

export interface DrawnForm {
  mode: "fixed" | "range";
  value: FormNumber;
  from: FormNumber;
  to: FormNumber;
  spread: "linear" | "log";
}

export interface FaultForm
  extends Record<NumberFieldName, DrawnForm>,
    Record<(typeof textFields)[number], string> {
  kind: string;
}

export interface CandidateForm {
  id: string;
  title: string;
  weight: FormNumber;
  normal: boolean;
  faults: FaultForm[];
}

/** The scenario as the form edits it: every field present, so that half-done work has a place. */
export interface ScenarioForm {
  id: string;
  vehicle: string;
  title: string;
  system: string;
  level: string;
  learningGoal: string;
  instructorNote: string;
  complaints: { text: string }[];
  pool: CandidateForm[];
  startConditions: Record<string, FormNumber>;
  instruments: string[];
  limits: { shopMinutes: FormNumber; actions: FormNumber };
  par: { shopMinutes: FormNumber; readings: FormNumber };
  requirePrediction: boolean;
  weights: Record<(typeof rubricLines)[number], FormNumber>;
  passMark: FormNumber;
}

const emptyDrawn = (): DrawnForm => ({ mode: "fixed", value: null, from: null, to: null, spread: "linear" });

const byName = <Name extends string, Value>(
  names: readonly Name[],
  value: () => Value,
): Record<Name, Value> => Object.fromEntries(names.map((name) => [name, value()])) as Record<Name, Value>;

export function emptyFault(kind = ""): FaultForm {
  const fault: FaultForm = {
    kind,
    ...byName(textFields, () => ""),
    ...byName(numberFields, emptyDrawn),
  };
  if (isFaultKind(kind)) {
    for (const { field, usual } of faultForms[kind].numbers) fault[field] = toDrawn(usual);
  }
  return fault;
}

export const emptyCandidate = (): CandidateForm => ({
  id: "",
  title: "",
  weight: 1,
  normal: false,
  faults: [emptyFault()],
});

type Loose = Readonly<Record<string, unknown>>;

const record = (value: unknown): Loose =>
  typeof value === "object" && value !== null && !Array.isArray(value) ? (value as Loose) : {};
const list = (value: unknown): readonly unknown[] => (Array.isArray(value) ? value : []);
const text = (value: unknown, otherwise = ""): string => (typeof value === "string" ? value : otherwise);
const numeric = (value: unknown): FormNumber =>
  typeof value === "number" || typeof value === "string" ? value : null;

/** Reads whatever was saved, whole or half done, into the form. Never fails: what is missing is empty. */
export function fromDocument(saved: unknown): ScenarioForm {
  const document = record(saved);
  const limits = record(document.limits);
  const par = record(document.par);
  const weights = record(document.weights);
  return {
    id: text(document.id),
    vehicle: text(document.vehicle),
    title: text(document.title),
    system: text(document.system),
    level: text(document.level, "starter"),
    learningGoal: text(document.learningGoal),
    instructorNote: text(document.instructorNote),
    complaints: list(document.complaints).map((complaint) => ({ text: text(complaint) })),
    pool: list(document.pool).map(toCandidate),
    startConditions: Object.fromEntries(
      Object.entries(record(document.startConditions)).map(([name, value]) => [name, numeric(value)]),
    ),
    instruments: list(document.instruments).filter((name) => typeof name === "string"),
    limits: { shopMinutes: numeric(limits.shopMinutes), actions: numeric(limits.actions) },
    par: { shopMinutes: numeric(par.shopMinutes), readings: numeric(par.readings) },
    requirePrediction: document.requirePrediction === true,
    weights: Object.fromEntries(
      rubricLines.map((line) => [line, numeric(weights[line])]),
    ) as ScenarioForm["weights"],
    passMark: numeric(document.passMark),
  };
}

function toCandidate(saved: unknown): CandidateForm {
  const candidate = record(saved);
  return {
    id: text(candidate.id),
    title: text(candidate.title),
    weight: numeric(candidate.weight),
    normal: candidate.normal === true,
    faults: list(candidate.faults).map((fault) => {
      const saidFault = record(fault);
      const form = emptyFault();
      form.kind = text(saidFault.kind);
      for (const field of textFields) form[field] = text(saidFault[field]);
      if (isFaultKind(form.kind)) {
        for (const { field } of faultForms[form.kind].numbers) form[field] = toDrawn(saidFault[field]);
        for (const field of ["above", "below"] as const)
          if (saidFault[field] !== undefined) form[field] = toDrawn(saidFault[field]);
      }
      return form;
    }),
  };
}

function toDrawn(saved: unknown): DrawnForm {
  const range = record(saved);
  if (!("from" in range) && !("to" in range)) return { ...emptyDrawn(), value: numeric(saved) };
  return {
    mode: "range",
    value: null,
    from: numeric(range.from),
    to: numeric(range.to),
    spread: range.spread === "log" ? "log" : "linear",
  };
}

/** The form as a scenario document, whole or half done; what is empty is left out, for the schema to miss. */
export function toDocument(form: ScenarioForm): Record<string, unknown> {
  const { startConditions, complaints, pool, ...rest } = form;
  return {
    format: "probeworthy-scenario-1",
    ...rest,
    complaints: complaints.map((complaint) => complaint.text),
    pool: withIds(pool).map(({ normal, faults, ...candidate }) => ({
      ...candidate,
      faults: faults.map(toTemplate),
      ...(normal ? { normal } : {}),
    })),
    startConditions: Object.fromEntries(
      Object.entries(startConditions).filter(([, value]) => value !== null && value !== ""),
    ),
  };
}

function toTemplate(form: FaultForm): Record<string, unknown> {
  if (!isFaultKind(form.kind)) return { kind: form.kind };
  const { places, numbers, condition } = faultForms[form.kind];
  const texts = [
    ...places.flatMap(({ field, part, other }) => [field, part, other]),
    ...(condition === true ? (["condition", "is"] as const) : []),
  ];
  const fields: [string, unknown][] = [
    ...texts.flatMap((field): [string, unknown][] => (field === undefined ? [] : [[field, form[field]]])),
    ...(condition === true
      ? (["above", "below"] as const).map((field): [string, unknown] => [field, fromDrawn(form[field])])
      : []),
    ...numbers.map(({ field }): [string, unknown] => [field, fromDrawn(form[field])]),
  ];
  return Object.fromEntries([
    ["kind", form.kind],
    ...fields.filter(([, value]) => value !== "" && value !== null),
  ]);
}

function fromDrawn({ mode, value, from, to, spread }: DrawnForm): unknown {
  return mode === "fixed" ? value : { from, to, spread };
}

/** Candidates keep the id they have; a new one gets one from its title, so that logs and results read well. */
function withIds(pool: readonly CandidateForm[]): CandidateForm[] {
  const taken = new Set(pool.map(({ id }) => id).filter((id) => id !== ""));
  return pool.map((candidate, index) => {
    if (candidate.id !== "") return candidate;
    const wanted = slug(candidate.title) || `candidate-${index + 1}`;
    let id = wanted;
    for (let count = 2; taken.has(id); count++) id = `${wanted}-${count}`;
    taken.add(id);
    return { ...candidate, id };
  });
}

/** Small letters, digits and hyphens, beginning with a letter; empty when nothing is left. */
export function slug(title: string): string {
  return title
    .normalize("NFKD")
    .replace(/\p{M}/gu, "")
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, "-")
    .replace(/^[^a-z]+|-+$/g, "")
    .slice(0, 48)
    .replace(/-+$/, "");
}
