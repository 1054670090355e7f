/** Prints the terminal chart of the training vehicle with every supplied fault: `npx tsx packages/training-vehicle/examples/print-charts.ts` */
import { makeVariant } from "@probeworthy/evaluation/server";
import { steeringScenarios, trainingVehicle } from "@probeworthy/training-vehicle";
import { prepareVehicle, terminalChart } from "@probeworthy/vehicle";

for (const scenario of steeringScenarios.slice(0, -1)) {
  for (const cause of scenario.pool) {
    const variant = makeVariant({ ...scenario, pool: [cause] }, trainingVehicle, "example"); // severities from a seed
    if (!variant.ok) throw new Error(variant.error.message);
    const vehicle = prepareVehicle(trainingVehicle, variant.value.faults);
    if (!vehicle.ok) throw new Error(vehicle.error.code);
    const chart = terminalChart(vehicle.value, scenario.system);
    if (!chart.ok) throw new Error(chart.error.code);
    console.log(`\n${cause.title}: ${JSON.stringify(variant.value.faults)}`);
    for (const { row, value, unit } of chart.value)
      console.log(`${row.function}, ${row.conditionTitle}: ${value.toFixed(2)} ${unit}`);
  }
}
