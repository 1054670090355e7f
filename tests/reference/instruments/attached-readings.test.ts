import { trainingVehicle } from "@probeworthy/training-vehicle";
import { prepareVehicle, settle, startState, testPoints } from "@probeworthy/vehicle";
import { expect, it } from "vitest";

type Fixtures = NonNullable<Parameters<typeof settle>[2]>;

const instruments: Record<string, (a: string, b: string) => Fixtures> = {
  voltmeter: (a, b) => [{ kind: "resistor", id: "meter", a, b, ohms: 10e6 }],
  ohmmeter: (a, b) => [
    { kind: "resistor", id: "meter", a, b, ohms: 1000.16 },
    { kind: "currentSource", id: "meterSource", from: b, to: a, amps: 0.4 / 1000.16 },
  ],
  ammeter: (a, b) => [{ kind: "resistor", id: "meter", a, b, ohms: 0.17 }],
  lamp: (a, b) => [{ kind: "filament", id: "meter", a, b, ratedVolts: 12, ratedWatts: 5 }],
};

/** A node of its own makes the vehicle prepare a circuit with the instrument; tied to the body it changes no reading. */
const aside: Fixtures = [{ kind: "resistor", id: "aside", a: "aside", b: "body", ohms: 1 }];

const situations = {
  "key off": {},
  "steering at idle": { key: "on", engineSpeed: 850, steeringEffort: 6 },
};

for (const [instrument, lay] of Object.entries(instruments))
  it.each(Object.entries(situations))(
    `a ${instrument} reads the same laid across the circuit as in one prepared with it, wherever it is laid: %s`,
    (_, conditions) => {
      const vehicle = prepareVehicle(trainingVehicle);
      if (!vehicle.ok) throw new Error(vehicle.error.code);
      const state = startState(vehicle.value, conditions);
      if (!state.ok) throw new Error(state.error.code);
      const amps = (fixtures: Fixtures): number => {
        const settled = settle(vehicle.value, state.value, fixtures);
        if (!settled.ok) throw new Error(JSON.stringify(settled.error));
        return settled.value.amps("meter");
      };
      const points = testPoints(vehicle.value, state.value);
      expect(points.length).toBeGreaterThan(100);
      // Every fortieth, another one for each instrument: a circuit is prepared anew for each of them.
      const first = Object.keys(instruments).indexOf(instrument);
      for (const { id } of points.filter((_point, at) => at % 40 === first)) {
        const theirs = amps([...lay(id, "X80:6"), ...aside]);
        // A filament's law is curved: Newton's method ends within 1e-7 of it.
        const relative = instrument === "lamp" ? 1e-7 : 1e-9;
        const allowed = relative * Math.abs(theirs) + 1e-15;
        expect(Math.abs(amps(lay(id, "X80:6")) - theirs), id).toBeLessThan(allowed);
      }
    },
  );
