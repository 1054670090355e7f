import { describe, expect, it } from "vitest";
import { confusionMatrix } from "./statistics/confusion-matrix";
import { itemDifficulty } from "./statistics/item-analysis";
import { confusionCsv, itemStatisticsCsv } from "./statistics-csv";

const correlation = (r: number) => ({ r, interval: { low: r - 0.5, high: r + 0.5 }, attempts: 12 });

describe("statistics as CSV", () => {
  it("leaves cells empty where there are too few attempts, and a negative figure is a figure", () => {
    const csv = itemStatisticsCsv(
      [
        {
          title: "=SUM(A1)",
          difficulty: itemDifficulty([1, 1, 0]),
          discrimination: { ok: false, error: { code: "too_few_attempts", have: 3, need: 10 } },
        },
        {
          title: "No crank",
          difficulty: itemDifficulty([1, 1, 0, 1, 0]),
          discrimination: {
            ok: true,
            value: { corrected: correlation(-0.25), uncorrected: correlation(0.5) },
          },
        },
      ],
      { separator: ";", decimalComma: true },
    );
    const [header, few, known] = csv.split("\r\n");
    expect(header?.startsWith("\uFEFFItem;Attempts;Right")).toBe(true);
    expect(few).toBe("'=SUM(A1);3;;;;;;;");
    expect(known).toBe("No crank;5;3;0,600;0,231;0,882;-0,250;-0,750;0,250");
  });

  it("true kinds down, named kinds across", () => {
    const matrix = confusionMatrix([
      { faults: [{ kind: "open", rightNames: ["open"] }], named: ["battery"] },
      { faults: [{ kind: "open", rightNames: ["open"] }], named: ["open"] },
    ]);
    expect(
      confusionCsv({ matrix, titleOf: (kind) => kind.toUpperCase() })
        .split("\r\n")
        .slice(0, 3),
    ).toEqual(["\uFEFFTrue kind,BATTERY,OPEN,Attempts", "BATTERY,0,0,0", "OPEN,1,1,2"]);
  });
});
