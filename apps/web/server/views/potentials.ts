import "server-only";
import type { Sheet } from "@probeworthy/diagram";
import { type PreparedVehicle, type Settled, settle, type VehicleState } from "@probeworthy/vehicle";
import { type Potentials, potentialsSchema } from "@/features/potentials/potentials-view";
import { symptomsOf } from "./system-symptoms";

const rounded = (value: number, figures: number) => {
  const shown = Number(value.toFixed(figures));
  return shown === 0 ? 0 : shown;
};

/** The point a conductor's end, as the document writes it, is measured at. */
function pointOfEnd(end: string, groundPoints: ReadonlySet<string>): string {
  const second = /^(.+)\/b$/.exec(end);
  if (second !== null) return `${second[1]}:b`;
  if (groundPoints.has(end)) return `${end}:ring`;
  return end.includes(".") ? `${end}:h` : end;
}

export type PotentialsResult =
  | { readonly ok: true; readonly value: Potentials }
  | { readonly ok: false; readonly message: string };

/** Volts at every point and amps in every conductor of a sheet, from one settled car. */
export function potentialsOf(vehicle: PreparedVehicle, state: VehicleState, sheet: Sheet): PotentialsResult {
  const settled = settle(vehicle, state);
  if (!settled.ok)
    return {
      ok: false,
      message: "message" in settled.error ? settled.error.message : settled.error.code,
    };
  return { ok: true, value: toView(vehicle, settled.value, sheet) };
}

function toView(vehicle: PreparedVehicle, settled: Settled, sheet: Sheet): Potentials {
  const { document } = vehicle;
  const grounds = new Set(document.groundPoints.map(({ id }) => id));
  const volts = (point: string) => rounded(settled.volts(point), 3);
  const shown = new Set([
    ...sheet.testPoints.map(({ pointId }) => pointId),
    ...sheet.symbols.flatMap(({ terminals }) => terminals.flatMap(({ pointOf }) => pointOf ?? [])),
  ]);
  const points = Object.fromEntries([...shown].map((point) => [point, volts(point)]));
  const conductors = Object.fromEntries(
    sheet.conductors.map(({ id, from, to }) => [
      id,
      {
        from: volts(pointOfEnd(from, grounds)),
        to: volts(pointOfEnd(to, grounds)),
        amps: rounded(settled.amps(id), 4),
      },
    ]),
  );
  const { unplugged, pulledFuses } = settled.state;
  const about = new Set(
    symptomsOf(
      document,
      sheet.symbols.map(({ designator }) => designator),
    ),
  );
  const highest = Math.max(...Object.values(conductors).flatMap(({ from, to }) => [from, to]));
  return potentialsSchema.parse({
    points,
    conductors,
    supplyVolts: Math.max(document.nominalVolts, highest),
    noticed: settled.symptoms.map(({ id, title, text }) => ({ id, title, text })),
    noticedFirst: settled.symptoms.filter(({ id, normal }) => !normal || about.has(id)).map(({ id }) => id),
    apart: { unplugged: [...unplugged], pulledFuses: [...pulledFuses] },
  });
}
