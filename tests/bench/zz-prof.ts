import { prepareCircuit } from "@probeworthy/circuit";
import { randomNetwork } from "/work/kernel/tests/reference/circuit/random-network";
for (const nodes of [150, 1600]) {
const net = randomNetwork(150, { nodes, diodes: nodes/5, switches: 10 });
const p = prepareCircuit(net); if (!p.ok) throw 1;
const c = p.value;
const rs = net.elements.filter((e) => e.kind === "resistor");
let its = 0;
const N = 3000;
for (let k = 0; k < 2; k++) {
const t0 = performance.now(); its = 0;
for (let i = 0; i < N; i++) {
  const r = rs[(i * 7) % rs.length]!;
  c.set(r.id, { ohms: (r as any).ohms * (1 + (i % 5) / 3) });
  const s = c.solve(); if (!s.ok) throw new Error(s.error.message);
  its += s.value.iterations;
}
console.log(nodes, "nodes", net.elements.length, "elements", ((performance.now() - t0) / N * 1e3).toFixed(1), "us", its / N, "iterations");
}}
