import { across, beyond, type Evaluation, isSlopeKept } from "../kernel/iterate";
import { logistic, softplus } from "../laws/bends";
import { foldbackEnd, foldbackShare, foldbackSlope } from "../laws/regulator-foldback";
import type { Regulator } from "../network";
import type { Builders } from "./two-terminal";

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
 *
 * With fold-back the limit falls with the output: in place of 1000, the corner of z is
 *
 *   1000 · (f + (1 − f) · vo/volts),  f = foldbackAmps/limitAmps,  with vo held (smoothly) above −volts·min(f, 0.1)/2
 *
 * from limitAmps at the nominal output through foldbackAmps at 0 V. A load that draws little less at low volts (a cold
 * filament, a current source) may cross that falling line more than once, and such a supply may fail to start or stay
 * down after a short is gone. Newton always comes down the line from the top, so the answer is the crossing that is
 * reached from full output; a load that takes more than foldbackAmps at any voltage may have none.
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
  /** foldbackAmps / limitAmps; 1 without fold-back. */
  readonly foldback: Float64Array;
  /** z of the last evaluation. */
  readonly last: Float64Array;
  /** Nine entries per device: rows input, output, reference by columns input, output, reference. */
  readonly entry: Int32Array;
  /** Three slopes per device in the Jacobian: of the output by input and by output, of the quiescent current. */
  readonly held: Float64Array;
  /** Three flows per device: input → output, input → reference, output → reference. */
  readonly flow: number;
}

export type Triple = readonly [input: number, output: number, reference: number];

export function createRegulatorTable(nodes: readonly Triple[], { pattern, flows }: Builders): RegulatorTable {
  const flow = flows.next();
  for (const [input, output, reference] of nodes) {
    flows.add(input, output);
    flows.add(input, reference);
    flows.add(output, reference);
  }
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
    foldback: column(),
    last: column(),
    entry: Int32Array.from(nodes.flatMap((n) => n.flatMap((row) => n.map((col) => pattern.entry(row, col))))),
    held: new Float64Array(3 * nodes.length),
    flow,
  };
}

export function setRegulator(table: RegulatorTable, i: number, element: Regulator): void {
  table.volts[i] = element.volts;
  table.limit[i] = element.limitAmps;
  table.dropout[i] = element.dropoutVolts ?? 0.5;
  table.quiescent[i] = element.quiescentAmps ?? 0;
  table.ohms[i] = element.outputOhms ?? 0.01;
  table.foldback[i] = (element.foldbackAmps ?? element.limitAmps) / element.limitAmps;
}

/** Cold start in the middle of the regulating range. */
export function resetRegulators(table: RegulatorTable): void {
  table.last.fill(0.5 / currentBend);
}

const zAtLimit = 1 / currentBend;
/** Below this z the output is nothing beside its leak, and farther down the numbers end. */
const footEnd = -100;
/** On the foot Newton goes down by one unit of z a step when it is far off; less than this is the end of its way. */
const shortStep = 0.25;

/** Output current as a part of the bend current; written about the nearer corner so that nothing cancels. */
const outputCurve = (z: number, corner: number): number =>
  z < corner / 2 ? softplus(z) - softplus(z - corner) : corner + softplus(-z) - softplus(corner - z);

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

/** The output voltage, as a part of the nominal one, at a z that lies lower than the node voltages say. */
const outputPart = (table: RegulatorTable, x: Evaluation, i: number, lower: number): number =>
  (across(x, table.output[i], table.reference[i]) + lower * table.ohms[i] * table.limit[i] * currentBend) /
  table.volts[i];

/**
 * Limiting with the fold-back taken in. On the falling line Newton runs the wrong way for a load that could have the
 * full output: down to below 0 V, where the line has ended, and from there up again. Nothing comes up that way in
 * earnest, so whatever tries is sent to the top, from where it comes down again if it has to.
 */
function limitFolding(table: RegulatorTable, x: Evaluation, i: number, actual: number): number {
  const last = table.last[i];
  const fold = table.foldback[i];
  if (fold < 1 && last > zAtLimit && actual < last) {
    const was = outputPart(table, x, i, actual - last);
    const end = -foldbackEnd(fold);
    const becomes = outputPart(table, x, i, 0);
    if (was < end && becomes > end) return zAtLimit / 2;
  }
  return limitDrive(last, actual);
}

/**
 * An output that supplies next to nothing stands far down the exponential foot of the curve, and Newton goes down there
 * by one unit of z a step. The tangent has told which current is left over: go to where the curve itself has it, as the
 * limiting of a junction does (see diode.ts).
 */
function slideDown(last: number, wanted: number): number {
  // A short step needs no help, and the rounding of the logarithm would call it limited for ever.
  if (last < footEnd || last - wanted < shortStep) return wanted;
  const left = softplus(last) + logistic(last) * (wanted - last);
  return left > 0 ? Math.min(last, Math.log(Math.expm1(left))) : wanted;
}

/** Adds each regulator. Returns how many were evaluated short of where the node voltages are. */
export function evaluateRegulators(table: RegulatorTable, x: Evaluation): number {
  let limited = 0;
  for (let i = 0; i < table.count; i++) {
    const actual = driveOf(table, x, i);
    const z = x.isLimiting ? limitFolding(table, x, i, actual) : actual;
    if (z !== actual) limited++;
    table.last[i] = z;

    const bend = table.limit[i] * currentBend;
    const fold = table.foldback[i];
    const part = fold < 1 ? outputPart(table, x, i, actual - z) : 1;
    const corner = zAtLimit * (fold < 1 ? foldbackShare(fold, part) : 1);
    const slope = logistic(z) - logistic(z - corner);
    const siemens = slope / table.ohms[i];
    // What the limit rises by with the output: a negative conductance.
    const rise =
      fold < 1 ? (table.limit[i] * logistic(z - corner) * foldbackSlope(fold, part)) / table.volts[i] : 0;
    const headroom = headroomOf(table, x, i);
    const follow = siemens * logistic((table.volts[i] - headroom) / dropoutBend);
    const tanh = Math.tanh((headroom + table.dropout[i]) / quiescentVolts);
    const quiescentSiemens = (table.quiescent[i] * (1 - tanh * tanh)) / quiescentVolts + regulatorLeak;

    const input = table.input[i];
    const output = table.output[i];
    const reference = table.reference[i];
    const at = table.flow + 3 * i;
    x.amps[at] = bend * (outputCurve(z, corner) + (slope - rise * table.ohms[i]) * (actual - z));
    x.amps[at + 1] = table.quiescent[i] * tanh + regulatorLeak * across(x, input, reference);
    x.amps[at + 2] = regulatorLeak * across(x, output, reference);
    hold(table, x, i, follow, siemens - rise, quiescentSiemens);
  }
  return limited;
}

/** The three slopes are held or renewed together. */
function hold(
  table: RegulatorTable,
  x: Evaluation,
  i: number,
  follow: number,
  siemens: number,
  quiescent: number,
): void {
  const { held } = table;
  const at = 3 * i;
  const isKept =
    isSlopeKept(x, held[at], follow) &&
    isSlopeKept(x, held[at + 1], siemens) &&
    isSlopeKept(x, held[at + 2], quiescent);
  if (isKept) return;
  held[at] = follow;
  held[at + 1] = siemens;
  held[at + 2] = quiescent;
  x.stale[table.input[i]] = 1;
  x.stale[table.output[i]] = 1;
  x.stale[table.reference[i]] = 1;
  x.jacobianIsCurrent = false;
}

export function stampRegulators({ count, entry, held }: RegulatorTable, jacobian: Float64Array): void {
  for (let i = 0; i < count; i++)
    stamp(jacobian, entry, 9 * i, held[3 * i], held[3 * i + 1], held[3 * i + 2]);
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
