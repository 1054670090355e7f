"use client";

import { useDraft } from "../draft/draft-context";
import { suggestionsOf } from "../fields/draft-facts";

const offers = [
  "choiceConditions",
  "numberConditions",
  "components",
  "modules",
  "motors",
  "connectors",
  "ends",
  "colours",
  "points",
] as const;

/** The lists that fields offer while something is typed, once for the whole page. */
export function Offers() {
  const draft = useDraft();
  return offers.map((offer) => (
    <datalist key={offer} id={`offer-${offer}`}>
      {[...new Set(suggestionsOf(draft, offer))].map((value) => (
        <option key={value} value={value} />
      ))}
    </datalist>
  ));
}
