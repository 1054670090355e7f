import type { ComponentOf } from "../../document/component";
import type { NetworkBuilder } from "../network-builder";

export function compileLamp(lamp: ComponentOf<"lamp">, builder: NetworkBuilder): void {
  const { id, ratedVolts, ratedWatts } = lamp;
  addFilament(id, ratedVolts, ratedWatts, builder.inside(id, "1"), builder.inside(id, "2"), builder);
}

/** Both filaments end at the common terminal; faults of the first are at `E5#first`, of the second at `E5#second`. */
export function compileTwoFilamentLamp(lamp: ComponentOf<"twoFilamentLamp">, builder: NetworkBuilder): void {
  const { id, terminals, ratedVolts } = lamp;
  const common = builder.inside(id, terminals.common);
  const first = builder.inside(id, terminals.first);
  const second = builder.inside(id, terminals.second);
  addFilament(id, ratedVolts, lamp.firstWatts, builder.behind(`${id}#first`, first), common, builder);
  addFilament(
    `${id}#second`,
    ratedVolts,
    lamp.secondWatts,
    builder.behind(`${id}#second`, second),
    common,
    builder,
  );
  const crossed = builder.overlay.crossFilaments.get(id);
  if (crossed !== undefined) builder.faultResistor(`${id}#crossed`, first, second, crossed);
}

function addFilament(
  id: string,
  ratedVolts: number,
  ratedWatts: number,
  a: string,
  b: string,
  builder: NetworkBuilder,
): void {
  builder.add({ kind: "filament", id, a, b, ratedVolts, ratedWatts });
  const watts = builder.overlay.wrongWatts.get(id) ?? ratedWatts;
  builder.update((_, set) => set.field(id, "ratedWatts", watts));
}

/** A string of diodes as one, and the resistor that leaves its rated volts their rated amps. */
export function compileLedLamp(lamp: ComponentOf<"ledLamp">, builder: NetworkBuilder): void {
  const { id, forwardVolts, ratedVolts, ratedAmps } = lamp;
  const middle = builder.node(`${id}#string`);
  builder.add({
    kind: "led",
    id: `${id}#led`,
    anode: middle,
    cathode: builder.inside(id, "2"),
    ratedVolts: forwardVolts,
    ratedAmps,
  });
  builder.resistor(id, builder.inside(id, "1"), middle, Math.max(0.1, ratedVolts - forwardVolts) / ratedAmps);
}
