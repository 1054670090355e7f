/** Pull-up of both temperature inputs inside the engine module, to its second 5 V rail, Ω. */
export const pullUpOhms = 2200;

type Point = [celsius: number, ohms: number];

/** Coolant sensor: 2.5 kΩ at 20 °C. Our own rounded curve of a common type. */
export const coolantTable: Point[] = [
  [-40, 45_000],
  [-20, 15_000],
  [0, 5900],
  [20, 2500],
  [40, 1170],
  [60, 600],
  [80, 325],
  [100, 188],
  [120, 115],
  [140, 73],
];

/** Intake air sensor: the same family, a little flatter. */
export const intakeTable: Point[] = [
  [-40, 40_000],
  [-20, 14_000],
  [0, 5700],
  [20, 2500],
  [40, 1200],
  [60, 630],
  [80, 350],
  [100, 205],
];

/** Volts at the input for each temperature, sorted by volts: what the module looks up. */
const inverse = (table: readonly Point[]): (readonly [volts: number, celsius: number])[] =>
  table
    .map(([celsius, ohms]): [number, number] => [(5 * ohms) / (ohms + pullUpOhms), celsius])
    .sort((a, b) => a[0] - b[0]);

export const coolantVoltsToCelsius = inverse(coolantTable);
export const intakeVoltsToCelsius = inverse(intakeTable);
