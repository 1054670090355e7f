import { across, beyond, carry, type Evaluation } from "../kernel/iterate";
import type { PatternBuilder } from "../kernel/pattern";
import type { Regulator } from "../network";

/** Width of the bend between regulating and dropout, volts. */
const dropoutBend = 5e-3;
/** Width of the bends at no current and at the limit, as a part of the limit. */
const currentBend = 1e-3;
/** Input volts at which the quiescent current is 76 % of its full value. */
const quiescentVolts = 1;
/** Leak from input and from output to reference, siemens. */
const regulatorLeak = 1e-12;

/**
 * Linear series regulators. With vi, vo the input and output volts above the reference,
 *
 *   target = softmin(volts, vi − dropout)
 *   z      = (target − vo) / (outputOhms · bend),  bend = limit/1000 amps
 *   output = bend · (softplus(z) − softplus(z − 1000))        between 0 and limit, from input to output
 *   quiescent current = quiescentAmps · tanh(vi / 1 V)         from input to reference
 *
 * so it holds its voltage behind outputOhms, falls into constant current at the limit, follows the input less the
 * dropout when that is lower, and passes nothing once the output is above its target. No reverse current.
 */
export interface RegulatorTable {
  readonly count: number;
  readonly input: Int32Array;
  readonly output: Int32Array;
  readonly reference: Int32Array;
  readonly volts: Float64Array;
  readonly limit: Float64Array;
  readonly dropout: Float64Array;
  readonly quiescent: Float64Array;
  readonly ohms: Float64Array;
  /** z of the last evaluation. */
  readonly last: Float64Array;
  /** Nine entries per device: rows input, output, reference by columns input, output, reference. */
  readonly entry: Int32Array;
}

export function createRegulatorTable(
  nodes: readonly (readonly [number, number, number])[],
  builder: PatternBuilder,
): RegulatorTable {
  const column = () => new Float64Array(nodes.length);
  return {
    count: nodes.length,
    input: Int32Array.from(nodes, (n) => n[0]),
    output: Int32Array.from(nodes, (n) => n[1]),
    reference: Int32Array.from(nodes, (n) => n[2]),
    volts: column(),
    limit: column(),
    dropout: column(),
    quiescent: column(),
    ohms: column(),
    last: column(),
    entry: Int32Array.from(nodes.flatMap((n) => n.flatMap((row) => n.map((col) => builder.entry(row, col))))),
  };
}

export function setRegulator(table: RegulatorTable, i: number, element: Regulator): void {
  table.volts[i] = element.volts;
  table.limit[i] = element.limitAmps;
  table.dropout[i] = element.dropoutVolts ?? 0.5;
  table.quiescent[i] = element.quiescentAmps ?? 0;
  table.ohms[i] = element.outputOhms ?? 0.01;
}

/** Cold start in the middle of the regulating range. */
export function resetRegulators(table: RegulatorTable): void {
  table.last.fill(0.5 / currentBend);
}

/** ln(1 + eˣ) without overflow. */
const softplus = (x: number): number => Math.max(x, 0) + Math.log1p(Math.exp(-Math.abs(x)));
/** Its derivative. */
const logistic = (x: number): number => 1 / (1 + Math.exp(-x));

const zAtLimit = 1 / currentBend;

/** Output current as a part of the bend current; written about the nearer corner so that nothing cancels. */
const outputCurve = (z: number): number =>
  z < zAtLimit / 2 ? softplus(z) - softplus(z - zAtLimit) : zAtLimit + softplus(-z) - softplus(zAtLimit - z);

function headroomOf(table: RegulatorTable, x: Evaluation, i: number): number {
  return across(x, table.input[i], table.reference[i]) - table.dropout[i];
}

/** z; written about the nearer of the two targets, so that the last digits of the node voltages count. */
function driveOf(table: RegulatorTable, x: Evaluation, i: number): number {
  const spare = headroomOf(table, x, i) - table.volts[i];
  const missing =
    spare > 0
      ? -beyond(x, table.output[i], table.reference[i], table.volts[i])
      : beyond(x, table.input[i], table.output[i], table.dropout[i]);
  const bent = dropoutBend * softplus(-Math.abs(spare) / dropoutBend);
  return (missing - bent) / (table.ohms[i] * table.limit[i] * currentBend);
}

/** Current out of the output terminal. */
export function regulatorAmps(table: RegulatorTable, x: Evaluation, i: number): number {
  return table.limit[i] * currentBend * outputCurve(driveOf(table, x, i));
}

/**
 * Newton would jump for ever between "off", "regulating" and "at the limit", since the outer two are flat and say
 * nothing of the others: so no step passes a bend of the curve without a stop at it, and none crosses the whole range.
 */
function limitDrive(last: number, wanted: number): number {
  const jumps = (last >= zAtLimit && wanted < 0) || (last <= 0 && wanted > zAtLimit);
  if (jumps) return zAtLimit / 2;
  if (last > 0 && wanted < 0) return 0;
  if (last <= 0 && wanted < last) return slideDown(last, wanted);
  return last < zAtLimit && wanted > zAtLimit ? zAtLimit : wanted;
}

/**
 * An output that supplies next to nothing stands far down the exponential foot of the curve, and Newton goes down there
 * by one unit of z a step. The tangent has told which current is left over: go to where the curve itself has it, as the
 * limiting of a junction does (see diode.ts).
 */
function slideDown(last: number, wanted: number): number {
  const left = softplus(last) + logistic(last) * (wanted - last);
  return left > 0 ? Math.min(last, Math.log(Math.expm1(left))) : wanted;
}

/** Adds each regulator. Returns how many were evaluated short of where the node voltages are. */
export function evaluateRegulators(table: RegulatorTable, x: Evaluation, limit: boolean): number {
  let limited = 0;
  for (let i = 0; i < table.count; i++) {
    const actual = driveOf(table, x, i);
    const z = limit ? limitDrive(table.last[i], actual) : actual;
    if (z !== actual) limited++;
    table.last[i] = z;

    const bend = table.limit[i] * currentBend;
    const slope = logistic(z) - logistic(z - zAtLimit);
    const output = bend * (outputCurve(z) + slope * (actual - z));
    const siemens = slope / table.ohms[i];
    const headroom = headroomOf(table, x, i);
    const follow = siemens * logistic((table.volts[i] - headroom) / dropoutBend);
    const rise = Math.tanh((headroom + table.dropout[i]) / quiescentVolts);
    const quiescent = table.quiescent[i] * rise;
    const quiescentSiemens = (table.quiescent[i] * (1 - rise * rise)) / quiescentVolts + regulatorLeak;

    const input = table.input[i];
    const outputNode = table.output[i];
    const reference = table.reference[i];
    carry(x, input, outputNode, output);
    carry(x, input, reference, quiescent + regulatorLeak * across(x, input, reference));
    carry(x, outputNode, reference, regulatorLeak * across(x, outputNode, reference));
    stamp(x.jacobian, table.entry, 9 * i, follow, siemens, quiescentSiemens);
  }
  return limited;
}

function stamp(
  jacobian: Float64Array,
  entry: Int32Array,
  at: number,
  follow: number,
  siemens: number,
  quiescent: number,
): void {
  jacobian[entry[at]] += follow + quiescent;
  jacobian[entry[at + 1]] -= siemens;
  jacobian[entry[at + 2]] += siemens - follow - quiescent;
  jacobian[entry[at + 3]] -= follow;
  jacobian[entry[at + 4]] += siemens + regulatorLeak;
  jacobian[entry[at + 5]] += follow - siemens - regulatorLeak;
  jacobian[entry[at + 6]] -= quiescent;
  jacobian[entry[at + 7]] -= regulatorLeak;
  jacobian[entry[at + 8]] += quiescent + regulatorLeak;
}
