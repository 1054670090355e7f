import { describe, expect, it } from "vitest";
import { Drive } from "../testing/drive";
import { testPoints } from "./test-points";

const find = (drive: Drive, id: string) =>
  testPoints(drive.vehicle, drive.state).find((point) => point.id === id);

describe("testPoints", () => {
  it("are all known to the circuit and stand once", () => {
    const drive = new Drive();
    const points = testPoints(drive.vehicle, drive.state);
    expect(new Set(points.map(({ id }) => id)).size).toBe(points.length);
    for (const { id } of points) expect(Number.isFinite(drive.now.volts(id)), id).toBe(true);
  });
  it("give a reason exactly when they cannot be reached", () => {
    const drive = new Drive().do({ unplug: "X3" }).do({ pullFuse: "F1" });
    for (const { id, accessible, reason } of testPoints(drive.vehicle, drive.state))
      expect(reason === undefined, id).toBe(accessible);
  });
  it("open the component side of a connector by unplugging it, and a fuse's blades by pulling it", () => {
    const drive = new Drive();
    expect([find(drive, "X3.1:h")?.accessible, find(drive, "X3.1:c")?.accessible]).toEqual([true, false]);
    expect(find(drive, "F1:1:p")?.accessible).toBe(false);
    drive.do({ unplug: "X3" }).do({ pullFuse: "F1" });
    expect([find(drive, "X3.1:h")?.accessible, find(drive, "X3.1:c")?.accessible]).toEqual([true, true]);
    expect(find(drive, "F1:1:p")?.accessible).toBe(true);
  });
  it("name their conductor, and keep splices under the tape", () => {
    const drive = new Drive();
    expect(find(drive, "X3.1:h")).toMatchObject({
      conductor: "W16",
      owner: "X3",
      title: "X3 cavity 1, harness side",
    });
    expect(find(drive, "XS1")?.accessible).toBe(false);
  });
});
