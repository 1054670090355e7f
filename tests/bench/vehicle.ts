import { readMeter } from "@probeworthy/instruments";
import { trainingVehicle } from "@probeworthy/training-vehicle";
import { prepareVehicle, settle, startState, testPoints } from "@probeworthy/vehicle";
import { cpuSeconds, median } from "./cpu";
import type { Measurement } from "./measurement";

const assisting = { key: "on", engineSpeed: 850, steeringEffort: 3 };

/** What one question to the training vehicle costs, and what making it ready costs. CPU time. */
export async function vehicleBench(): Promise<Measurement[]> {
  const vehicle = prepareVehicle(trainingVehicle);
  if (!vehicle.ok) throw new Error(vehicle.error.code);
  const started = startState(vehicle.value, assisting);
  if (!started.ok) throw new Error(started.error.code);
  const settleAgain = () => {
    // A state object that has been settled answers from memory; a copy is worked out.
    const settled = settle(vehicle.value, { ...started.value });
    if (!settled.ok) throw new Error(settled.error.code);
  };
  // A document object that is new to the package is compiled and its circuit ordered.
  const compile = () => {
    const made = prepareVehicle({ ...trainingVehicle });
    if (!made.ok) throw new Error(made.error.code);
    const first = startState(made.value);
    if (!first.ok) throw new Error(first.error.code);
  };
  for (let i = 0; i < 300; i++) settleAgain();
  for (let i = 0; i < 5; i++) compile();
  const settles = Array.from({ length: 20 }, () => cpuSeconds(() => repeat(20, settleAgain)) / 20);
  const compiles = Array.from({ length: 15 }, () => cpuSeconds(compile));
  return [
    { name: "vehicle.settle_ms", value: median(settles) * 1e3, unit: "ms" },
    { name: "vehicle.compile_ms", value: median(compiles) * 1e3, unit: "ms" },
    { name: "vehicle.reading_at_new_place_ms", value: median(newPlaces()) * 1e3, unit: "ms" },
  ];
}

/** Seconds of the first voltage reading at each of 48 points spread over a vehicle whose document is new. */
function newPlaces(): number[] {
  const times: number[] = [];
  // The first two vehicles warm the engine up.
  for (let turn = 0; turn < 3; turn++) {
    const vehicle = prepareVehicle({ ...trainingVehicle });
    if (!vehicle.ok) throw new Error(vehicle.error.code);
    const started = startState(vehicle.value, assisting);
    if (!started.ok) throw new Error(started.error.code);
    const state = started.value;
    const points = testPoints(vehicle.value, state);
    for (let i = 0; i < 48; i++) {
      const red = points[Math.floor((i * points.length) / 48)]?.id ?? null;
      const seconds = cpuSeconds(() => {
        const reading = readMeter({
          vehicle: vehicle.value,
          state,
          function: "volts",
          red,
          black: "G1:-",
          meterFuse: "good",
        });
        if (!reading.ok) throw new Error(reading.error.code);
      });
      if (turn === 2) times.push(seconds);
    }
  }
  return times;
}

function repeat(times: number, run: () => void): void {
  for (let i = 0; i < times; i++) run();
}
