import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { attemptPolicies, countedPercent } from "./attempt-policy";
import { gradebookCsv } from "./gradebook-csv";
import { type GradebookAssignment, gradebookMatrix } from "./matrix";
import { toShown } from "./rounding";

const scores = fc.uniqueArray(
  fc.record({ number: fc.integer({ min: 1, max: 9 }), percent: fc.integer({ min: 0, max: 100 }) }),
  { selector: ({ number }) => number, minLength: 1 },
);

describe("which attempt counts", () => {
  const attempts = [
    { number: 2, percent: 90 },
    { number: 1, percent: 40 },
    { number: 3, percent: 71 },
  ];
  it.each([
    ["best", 90],
    ["latest", 71],
    ["first", 40],
    ["average", 67],
  ] as const)("%s: %d", (policy, percent) => {
    expect(countedPercent(attempts, policy)).toBe(percent);
  });

  it("is nothing, not 0, before anything is graded", () => {
    for (const policy of attemptPolicies) expect(countedPercent([], policy)).toBeNull();
  });

  it("does not depend on the order of the list, and lies between the worst and the best", () => {
    fc.assert(
      fc.property(scores, fc.constantFrom(...attemptPolicies), (list, policy) => {
        const counted = countedPercent(list, policy) ?? Number.NaN;
        expect(countedPercent([...list].reverse(), policy)).toBe(counted);
        const percents = list.map(({ percent }) => percent);
        expect(counted).toBeGreaterThanOrEqual(Math.min(...percents));
        expect(counted).toBeLessThanOrEqual(Math.max(...percents));
      }),
    );
  });
});

describe("rounding", () => {
  it.each([
    [82.25, 82.3],
    [82.24999999999999, 82.3],
    [82.2499, 82.2],
    [59.95, 60],
    [0, 0],
    [100, 100],
  ])("%f is shown as %f", (exact, shown) => {
    expect(toShown(exact)).toBe(shown);
  });
});

const learners = [
  { id: "l1", name: "Ada Brook", email: "ada@example.org" },
  { id: "l2", name: "=HYPERLINK(1)", email: "+bo@example.org" },
];
const assignment = (id: string, change: Partial<GradebookAssignment> = {}): GradebookAssignment => ({
  id,
  title: id,
  weight: 1,
  policy: "best",
  passMark: 60,
  closed: false,
  ...change,
});

describe("the table", () => {
  const matrix = gradebookMatrix(
    learners,
    [assignment("a", { weight: 3 }), assignment("b"), assignment("c", { closed: true })],
    [
      { learner: "l1", assignment: "a", number: 1, percent: 50 },
      { learner: "l1", assignment: "a", number: 2, percent: 80 },
      { learner: "l2", assignment: "a", number: 1, percent: 59.95 },
      { learner: "l2", assignment: "c", number: 1, percent: 30 },
      { learner: "gone", assignment: "a", number: 1, percent: 100 },
    ],
  );

  it("weighs what is graded or missing and leaves out what is still open", () => {
    // (3 · 80 + 1 · 0) / 4: b is open, c is closed and was not handed in.
    expect(matrix.rows[0]?.total).toBe(60);
    // (3 · 59.95 + 1 · 30) / 4 = 52.4625
    expect(matrix.rows[1]?.total).toBe(52.5);
  });

  it("tells graded, missing and open apart", () => {
    expect(matrix.rows[0]?.cells.map(({ state, passed }) => [state, passed])).toEqual([
      ["graded", true],
      ["open", null],
      ["missing", false],
    ]);
  });

  it("passes who reads the pass mark", () => {
    expect(matrix.rows[1]?.cells[0]).toMatchObject({ percent: 60, passed: true });
  });

  it("forms means over those who have a grade", () => {
    expect(matrix.means).toEqual([70, null, 30]);
  });

  it("has no total while nothing counts", () => {
    const empty = gradebookMatrix(learners, [assignment("a", { weight: 0 })], []);
    expect(empty.rows[0]?.total).toBeNull();
    expect(empty.totalMean).toBeNull();
  });
});

describe("CSV", () => {
  const matrix = gradebookMatrix(
    learners,
    [assignment('Feeds, "grounds"'), assignment("c", { closed: true })],
    [{ learner: "l1", assignment: 'Feeds, "grounds"', number: 1, percent: 82.25 }],
  );

  it("quotes, disarms formulas and writes one decimal", () => {
    expect(gradebookCsv(matrix)).toBe(
      [
        '\uFEFFName,Email,"Feeds, ""grounds""",c,Total %',
        "Ada Brook,ada@example.org,82.3,0.0,41.1",
        "'=HYPERLINK(1),'+bo@example.org,,0.0,0.0",
        "",
      ].join("\r\n"),
    );
  });

  it("writes decimal commas between semicolons", () => {
    const [, line] = gradebookCsv(matrix, { separator: ";", decimalComma: true }).split("\r\n");
    expect(line).toBe("Ada Brook;ada@example.org;82,3;0,0;41,1");
  });
});
