import { flowOhmic } from "../../packages/circuit/src/devices/ohmic";
import { evaluateDiodes } from "../../packages/circuit/src/devices/diode";
import { flowBranches } from "../../packages/circuit/src/devices/branch";
import { balanceFlows } from "../../packages/circuit/src/kernel/flows";
import { prepareSolver } from "../../packages/circuit/src/prepare-circuit";
import { evaluate, solveStep, requireFactor, measure } from "../../packages/circuit/src/kernel/newton-system";
import { iterate } from "../../packages/circuit/src/kernel/newton";
import { refactor, solveFactored, countOperations } from "../../packages/circuit/src/kernel/factor";
import { randomNetwork } from "../reference/circuit/random-network";
const best = (n: number, f: (i: number) => void) => { let b = Infinity; for (let k = 0; k < 60; k++) { const t = performance.now(); for (let i = 0; i < n; i++) f(i); b = Math.min(b, (performance.now() - t) / n); } return (b * 1e3).toFixed(2) + "us"; };
{
  const y = new Float64Array(512), x = new Float64Array(512).fill(1e-3);
  const axpy = (a: number) => { for (let i = 0; i < 512; i++) y[i] += a * x[i]; };
  let a = 1; console.log("axpy 512 (1024 flops)", best(2000, () => axpy((a *= 0.999))));
}
for (const nodes of [150, 1600]) {
  const net = randomNetwork(150, { nodes, diodes: nodes / 5, switches: 10 });
  const p = prepareSolver(net, false); if (!p.ok) throw 1;
  const c = p.value; const s = c.system;
  const rs = net.elements.filter((e) => e.kind === "resistor") as any[];
  let its = 0, count = 0;
  console.log(nodes, "full", best(300, (i) => { const r = rs[(i * 7) % rs.length]; c.set(r.id, { ohms: r.ohms * (1 + (i % 5) / 3) }); const q = c.solve(); if (!q.ok) throw 1; its += q.value.iterations; count++; }), its / count);
  console.log("  set", best(300, (i) => { const r = rs[(i * 7) % rs.length]; c.set(r.id, { ohms: r.ohms * (1 + (i % 5) / 3) }); }));
  console.log("  stamp+evaluate", best(300, () => { s.linearIsCurrent = false; evaluate(s); }));
  console.log("  evaluate", best(300, () => evaluate(s)));
  console.log("  measure", best(300, () => measure(s)));
  const T = s.tables;
  console.log("  flowOhmic", T.ohmic.count, best(1000, () => flowOhmic(T.ohmic, s.x, 1)), "diodes", T.diode.count, best(1000, () => evaluateDiodes(T.diode, s.x)), "balance", s.flows.count, best(1000, () => balanceFlows(s.flows, s.x.amps, s.x.residual)), "branches", T.branch.count, best(1000, () => flowBranches(T.branch, s.x, 1)), "jac", best(1000, () => s.x.jacobian.set(s.linear)), "fill", best(1000, () => s.x.residual.fill(0)));
  const f = requireFactor(s);
  console.log("  refactor all", best(300, () => { s.x.stale.fill(1); refactor(f, s.x.jacobian, s.x.stale); }), "nothing", best(300, () => refactor(f, s.x.jacobian, s.x.stale)));
  console.log("  one row", best(300, (i) => { s.x.stale[(i * 13) % nodes] = 1; refactor(f, s.x.jacobian, s.x.stale); }));
console.log("  solve", best(300, () => solveFactored(f, s.x.residual, s.step)), JSON.stringify(countOperations(f.symbolic)));
  console.log("  iterate at rest", best(300, () => iterate(s, 60)), s.iterations);
}
