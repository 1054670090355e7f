import { writeFileSync } from "node:fs";
import { execSync } from "node:child_process";
import { alterations, op150 } from "./circuit-alterations";
import { loopDeck, ngspiceLoop, usualOptions } from "./ngspice-loop";
const all = alterations(op150, 1000); const loop = ngspiceLoop(op150);
writeFileSync("/tmp/d1000.cir", loopDeck(loop, all, usualOptions, "n100", ["quit"]).join("\n"));
writeFileSync("/tmp/d100.cir", loopDeck(loop, all.slice(0, 100), usualOptions, "n100", ["quit"]).join("\n"));
for (let k = 0; k < 4; k++) {
const t = (f: string) => { const o = execSync(`bash -c 'TIMEFORMAT=%U; time ngspice -b ${f} >/dev/null 2>/dev/null' 2>&1`).toString(); return Number(o.trim()); };
console.log("native cpu us/op", ((t("/tmp/d1000.cir") - t("/tmp/d100.cir")) / 900 * 1e6).toFixed(0));
}
