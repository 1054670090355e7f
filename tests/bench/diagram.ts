import { conductorsThroughSymbols, countCrossings } from "@probeworthy/diagram";
import { layoutDrawing, layoutSheet, placeOnDrawing } from "@probeworthy/diagram/layout";
import { trainingVehicle } from "@probeworthy/training-vehicle";
import { cpuSeconds, cpuSecondsOf, median } from "./cpu";
import type { Measurement } from "./measurement";

/** What drawing every sheet of the training vehicle costs, CPU time, and how well it comes out. */
export async function diagramBench(): Promise<Measurement[]> {
  const rows: Measurement[] = [];
  const [first] = trainingVehicle.systems;
  // Starting the layout engine is paid once for a process, not for a sheet.
  if (first !== undefined) await layoutSheet(trainingVehicle, first.id);
  for (const { id } of trainingVehicle.systems) {
    const times: number[] = [];
    for (let turn = 0; turn < 3; turn += 1) {
      times.push(await cpuSecondsOf(async () => void (await layoutSheet(trainingVehicle, id))));
    }
    const base = await layoutDrawing(trainingVehicle, id);
    if (!base.ok) throw new Error(base.error.code);
    const sheet = placeOnDrawing(trainingVehicle, base.value, {});
    const moved = sheet.symbols.find((symbol) => symbol.component !== undefined);
    if (moved === undefined) throw new Error(`nothing is drawn of ${id}`);
    const drags = Array.from({ length: 9 }, (_, step) => ({ x: moved.x + step * 7, y: moved.y + step * 3 }));
    const dragged = drags.map((place) =>
      cpuSeconds(() => void placeOnDrawing(trainingVehicle, base.value, { [moved.id]: place })),
    );
    rows.push(
      { name: `diagram.layout_ms.${id}`, value: median(times) * 1e3, unit: "ms" },
      { name: `diagram.drag_ms.${id}`, value: median(dragged) * 1e3, unit: "ms" },
      { name: `diagram.crossings.${id}`, value: countCrossings(sheet), unit: "crossings" },
      {
        name: `diagram.conductor_through_symbol.${id}`,
        value: conductorsThroughSymbols(sheet).length,
        unit: "conductors",
      },
    );
  }
  return rows;
}
