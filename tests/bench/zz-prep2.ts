import { prepareCircuit } from "@probeworthy/circuit";
import { harness } from "./circuit-alterations";
const net = harness(150);
for (let r = 0; r < 6; r++) { const t = performance.now(); for (let i = 0; i < 100; i++) prepareCircuit(net); console.log(((performance.now() - t) / 100).toFixed(2)); }
