import { writeFileSync } from "node:fs";
import { execSync } from "node:child_process";
import { alterations, alterAndSolve, prepared } from "./circuit-alterations";
import { loopDeck, ngspiceLoop, usualOptions } from "./ngspice-loop";
import { randomNetwork } from "../reference/circuit/random-network";
let sumN = 0, sumO = 0;
for (let seed = 150; seed < 160; seed++) {
  const net = randomNetwork(seed, { nodes: 150, diodes: 30, switches: 10 });
  const all = alterations(net, 200); const loop = ngspiceLoop(net);
  writeFileSync("/tmp/d200.cir", loopDeck(loop, all, usualOptions, "n100", ["quit"]).join("\n"));
  writeFileSync("/tmp/d20.cir", loopDeck(loop, all.slice(0, 20), usualOptions, "n100", ["quit"]).join("\n"));
  const t = (f: string) => { const o = execSync(`bash -c 'TIMEFORMAT=%R; time ngspice -b ${f} 2>/dev/null | cat >/dev/null' 2>&1`).toString(); return Number(o.trim()); };
  const native = (t("/tmp/d200.cir") - t("/tmp/d20.cir")) / 180 * 1e6;
  const c = prepared(net); let its = 0; let min = Infinity;
  for (let r = 0; r < 200; r++) { const s = process.cpuUsage(); its = 0; for (const a of all) its += alterAndSolve(c, a).iterations; const d = process.cpuUsage(s); min = Math.min(min, (d.user + d.system) / 200); }
  sumN += native; sumO += min;
  console.log(seed, "native", native.toFixed(0), "ours", min.toFixed(1), "ratio", (native / min).toFixed(1), "its", its / 200);
}

console.log("mean", sumN / 10, sumO / 10, sumN / sumO);
