import { describe, expect, it } from "vitest";
import { halfway } from "./severity";

describe("halfway between two severities", () => {
  it("is the middle of the decades for a resistance, and an open counts as a very high one", () => {
    const ohms = (value: number) => [{ kind: "seriesResistance" as const, at: "W1", ohms: value }];
    expect(halfway(ohms(0.1), ohms(10))).toEqual(ohms(1));
    expect(halfway(ohms(1), [{ kind: "open", at: "W1" }])).toEqual(ohms(1000));
  });
  it("is the mean for an offset that changes its sign", () => {
    const volts = (value: number) => [
      { kind: "sensorOffset" as const, component: "B1", channel: "S1", volts: value },
    ];
    expect(halfway(volts(-1), volts(0.5))).toEqual(volts(-0.25));
  });
  it("does not exist between faults of different kinds or numbers", () => {
    expect(halfway([], [{ kind: "open", at: "W1" }])).toBeNull();
    expect(
      halfway([{ kind: "shortToGround", at: "X1.1:h", ohms: 1 }], [{ kind: "open", at: "W1" }]),
    ).toBeNull();
  });
});
