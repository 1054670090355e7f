import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { Page } from "@playwright/test";
import type axe from "axe-core";

const source = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

/** What axe finds against WCAG 2.2 A and AA on the page as it stands, as short lines; empty when it finds nothing. */
export async function axeViolations(page: Page): Promise<string[]> {
  // Evaluated by the debugger, so the page's own script policy stays as it is.
  await page.evaluate(source);
  const violations = await page.evaluate(async () => {
    // A colour half way through a transition is nobody's choice: the contrast that counts is where it ends.
    const transitions = document.getAnimations().filter((one) => one instanceof CSSTransition);
    await Promise.allSettled(transitions.map((one) => one.finished));
    const { axe: runner } = window as unknown as { axe: typeof axe };
    const tags = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"];
    return (await runner.run(document, { runOnly: tags })).violations;
  });
  return violations.map(({ id, nodes }) => `${id}: ${nodes.map((node) => node.html).join(" | ")}`);
}
