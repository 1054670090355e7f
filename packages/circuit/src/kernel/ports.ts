import { resetDiodes } from "../devices/diode";
import { resetCurves } from "../devices/table";
import type { DeviceTables } from "../tables";
import type { NumericFactor } from "./factor";
import { solveFactored } from "./factor";
import { balanceFlows, type Flows } from "./flows";
import { type Indices, packIndices } from "./indices";
import type { Evaluation } from "./iterate";
import { listPasses, type Pass } from "./passes";

/**
 * Two-terminal devices laid across a prepared network without touching its matrix: instruments, mostly. With U the
 * incidence of the devices and G their slopes, the Newton step of the whole follows from the factors of the network
 * alone (M. A. Woodbury, Statistical Research Group Memo 42, Princeton 1950):
 *
 *   (J + U·G·Uᵀ)⁻¹·r = s − Z·(G⁻¹ + Uᵀ·Z)⁻¹·Uᵀ·s,   s = J⁻¹·r,   Z = J⁻¹·U
 */
export interface Ports {
  readonly flows: Flows;
  readonly tables: DeviceTables;
  readonly passes: readonly Pass[];
  /** Iterate and residual are those of the network, the rest is the devices' own. */
  readonly x: Evaluation;
  /**
   * Nodes whose leak stands in the matrix only so that it has an inverse: an island of the network that the devices tie.
   * It is taken out again as a device of negative slope from the node to ground would.
   */
  cancelledLeaks: readonly number[];
  readonly leakSiemens: number;
  /** Rows of each column of U, its slope and its J⁻¹·column: the devices, then the leaks to cancel. */
  from: Indices;
  to: Indices;
  siemens: Float64Array;
  columns: readonly Float64Array[];
  columnsAreCurrent: boolean;
  /** Small system, row-major with its right side as last column. */
  dense: Float64Array;
}

/** `cancelLeaks` has to follow before the first solve. */
export function createPorts(
  flows: Flows,
  tables: DeviceTables,
  network: Evaluation,
  leakSiemens: number,
): Ports {
  return {
    flows,
    tables,
    passes: listPasses(tables),
    x: {
      ...network,
      amps: new Float64Array(flows.count),
      jacobian: new Float64Array(0),
      stale: new Uint8Array(network.stale.length),
    },
    cancelledLeaks: [],
    leakSiemens,
    from: flows.from,
    to: flows.to,
    siemens: new Float64Array(0),
    columns: [],
    columnsAreCurrent: false,
    dense: new Float64Array(0),
  };
}

/** States which leaks of the matrix are to be taken out again. */
export function cancelLeaks(ports: Ports, nodes: readonly number[]): void {
  const ground = ports.x.high.length - 1;
  const count = ports.flows.count + nodes.length;
  ports.cancelledLeaks = nodes;
  ports.from = packIndices([...ports.flows.from, ...nodes], ground);
  ports.to = packIndices([...ports.flows.to, ...nodes.map(() => ground)], ground);
  ports.siemens = new Float64Array(count);
  ports.columns = Array.from({ length: count }, () => new Float64Array(ground + 1));
  ports.columnsAreCurrent = false;
  ports.dense = new Float64Array(count * (count + 1));
}

/** Forgets where the curves stood. */
export function resetPorts(ports: Ports): void {
  resetDiodes(ports.tables.diode);
  resetCurves(ports.tables.curve);
}

/** Lets the devices write their flows into the residual; answers how many were limited. */
export function evaluatePorts(ports: Ports, network: Evaluation, drive: number): number {
  const { x, passes, flows } = ports;
  x.isLimiting = network.isLimiting;
  x.isMeasuring = network.isMeasuring;
  // A slope here costs no factorisation: it is taken as it is.
  x.isRefreshing = true;
  let limited = 0;
  for (let i = 0; i < passes.length; i++) limited += passes[i](x, drive);
  balanceFlows(flows, ports.tables.ohmic.count, x.amps, x.residual);
  return limited;
}

function readSlopes({ tables, siemens, flows, leakSiemens }: Ports): void {
  siemens.fill(0, 0, flows.count);
  siemens.fill(-leakSiemens, flows.count);
  siemens.set(tables.siemens.subarray(0, -1));
}

/** Turns the step of the network alone into that of the network with its ports. */
export function correctStep(
  ports: Ports,
  factor: NumericFactor,
  step: Float64Array,
  spare: Float64Array,
): void {
  const { from, to, siemens, columns, dense } = ports;
  const count = from.length;
  if (!ports.columnsAreCurrent) {
    for (let j = 0; j < count; j++) {
      spare.fill(0);
      spare[from[j]] += 1;
      spare[to[j]] -= 1;
      solveFactored(factor, spare, columns[j]);
    }
    ports.columnsAreCurrent = true;
  }
  readSlopes(ports);
  const width = count + 1;
  for (let i = 0; i < count; i++) {
    // Row i of I + G·Uᵀ·Z, which needs no division by a slope that may be nothing.
    for (let j = 0; j < count; j++) {
      const rise = columns[j][from[i]] - columns[j][to[i]];
      dense[i * width + j] = siemens[i] * rise + (i === j ? 1 : 0);
    }
    dense[i * width + count] = siemens[i] * (step[from[i]] - step[to[i]]);
  }
  solveDense(dense, count);
  for (let j = 0; j < count; j++) {
    const amps = dense[j * width + count];
    const column = columns[j];
    for (let row = 0; row < column.length; row++) step[row] -= amps * column[row];
  }
}

/** Gaussian elimination with row pivoting, in place; the solution ends up in the last column. */
function solveDense(a: Float64Array, count: number): void {
  const width = count + 1;
  for (let k = 0; k < count; k++) {
    let pivot = k;
    for (let i = k + 1; i < count; i++)
      if (Math.abs(a[i * width + k]) > Math.abs(a[pivot * width + k])) pivot = i;
    for (let j = 0; j <= count; j++) {
      const kept = a[k * width + j];
      a[k * width + j] = a[pivot * width + j];
      a[pivot * width + j] = kept;
    }
    for (let i = k + 1; i < count; i++) {
      const factor = a[i * width + k] / a[k * width + k];
      for (let j = k; j <= count; j++) a[i * width + j] -= factor * a[k * width + j];
    }
  }
  for (let i = count - 1; i >= 0; i--) {
    let sum = a[i * width + count];
    for (let j = i + 1; j < count; j++) sum -= a[i * width + j] * a[j * width + count];
    a[i * width + count] = sum / a[i * width + i];
  }
}
