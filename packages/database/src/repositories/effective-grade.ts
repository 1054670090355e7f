import type { GradeStatus, Prisma } from "../generated/client";

/** What counts for an attempt: the last decision of a person, else the last computed revision. */
export interface EffectiveGrade {
  score: number;
  maximum: number;
  status: GradeStatus;
  revision: number;
  isOverridden: boolean;
}

/** The relations a query must include for {@link toEffectiveGrade}: newest first, one of each. */
export const forEffectiveGrade = {
  grades: {
    select: { score: true, maximum: true, status: true, revision: true },
    orderBy: { revision: "desc" },
    take: 1,
  },
  overrides: { select: { score: true }, orderBy: [{ createdAt: "desc" }, { id: "desc" }], take: 1 },
} satisfies Prisma.AttemptInclude;

interface Graded {
  grades: { score: number; maximum: number; status: GradeStatus; revision: number }[];
  overrides: { score: number | null }[];
}

export function toEffectiveGrade({ grades, overrides }: Graded): EffectiveGrade | null {
  const computed = grades[0];
  if (computed === undefined) return null;
  const decided = overrides[0]?.score ?? null;
  const { maximum, revision } = computed;
  return decided === null
    ? { score: computed.score, maximum, status: computed.status, revision, isOverridden: false }
    : { score: decided, maximum, status: "final", revision, isOverridden: true };
}
