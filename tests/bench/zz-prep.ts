import { prepareCircuit } from "@probeworthy/circuit";
import { harness } from "./circuit-alterations";
import { choosePivotOrder } from "../../packages/circuit/src/kernel/ordering";
import { analyse } from "../../packages/circuit/src/kernel/symbolic";
import { orderByLevel } from "../../packages/circuit/src/kernel/level-order";
import { assemble } from "../../packages/circuit/src/kernel/assemble";
import { prepareSolver } from "../../packages/circuit/src/prepare-circuit";
const best = (n: number, f: () => void) => { let b = Infinity; for (let k = 0; k < n; k++) { const t = performance.now(); f(); b = Math.min(b, performance.now() - t); } return b.toFixed(2) + "ms"; };
for (const nodes of [150, 800, 3200]) {
  const net = harness(nodes);
  console.log(nodes, "prepare", best(12, () => prepareCircuit(net)), "prepare+solve", best(12, () => { const p = prepareCircuit(net); if (p.ok) p.value.solve(); }));
  const p = prepareSolver(net, false); if (!p.ok) throw 1; const s = p.value; s.solve();
  const values = assemble(s.system.pattern, s.system.matrix);
  const o = choosePivotOrder(s.system.pattern, values); if (!o.ok) throw 2;
  console.log("  order", best(12, () => choosePivotOrder(s.system.pattern, values)), "analyse", best(12, () => analyse(s.system.pattern, o.order)), "level", best(12, () => orderByLevel(analyse(s.system.pattern, o.order))));
}
