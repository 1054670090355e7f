"use client";

import type { Fault } from "@probeworthy/vehicle";
import { useState } from "react";
import { Button } from "@/components/button";
import type { LivePlaces } from "../vehicles/vehicles-view";

export type LiveFaultKind = keyof LivePlaces;

/** The faults that are put in here: a kind, a place and, where it matters, how many ohms. */
const kinds: Readonly<Record<LiveFaultKind, { readonly title: string; readonly ohms?: number }>> = {
  open: { title: "Open circuit" },
  seriesResistance: { title: "Too much resistance", ohms: 0.5 },
  shortToGround: { title: "Short to ground", ohms: 0.1 },
  fuseBlown: { title: "Fuse open, nothing behind it" },
};
const kindNames = Object.keys(kinds) as LiveFaultKind[];

function makeFault(kind: LiveFaultKind, place: string, ohms: number): Fault {
  switch (kind) {
    case "open":
      return { kind, at: place };
    case "seriesResistance":
    case "shortToGround":
      return { kind, at: place, ohms };
    case "fuseBlown":
      return { kind, component: place };
  }
}

const faultWords = (fault: Fault): string => {
  const form = fault.kind in kinds ? kinds[fault.kind as LiveFaultKind].title : fault.kind;
  const place = "at" in fault ? fault.at : "component" in fault ? fault.component : "";
  return `${form}, ${place}${"ohms" in fault ? `, ${fault.ohms} Ω` : ""}`;
};

export interface LiveFaultsProps {
  readonly places: LivePlaces;
  readonly faults: readonly Fault[];
  readonly onChange: (faults: readonly Fault[]) => void;
}

/** Puts up to three faults into the car of the drawing, and takes them out again. */
export function LiveFaults({ places, faults, onChange }: LiveFaultsProps) {
  const [kind, setKind] = useState<LiveFaultKind>("open");
  const [place, setPlace] = useState("");
  const [ohms, setOhms] = useState("");
  const usual = kinds[kind].ohms;
  const amount = usual === undefined ? 1 : Number((ohms === "" ? String(usual) : ohms).replace(",", "."));
  const offered = places[kind];
  const chosen = offered.some((one) => one.place === place) ? place : offered[0]?.place;
  const canAdd = chosen !== undefined && amount > 0 && faults.length < 3;
  const control = "min-h-11 w-full rounded-sheet border border-edge bg-paper px-2 hover:border-ink";
  return (
    <div className="space-y-3">
      {faults.length === 0 ? (
        <p className="text-sm text-ink-soft">None: the car is in order.</p>
      ) : (
        <ul className="space-y-1">
          {faults.map((fault, position) => (
            <li
              key={JSON.stringify(fault)}
              className="flex items-center justify-between gap-2 border-b border-hairline"
            >
              <span>{faultWords(fault)}</span>
              <Button
                aria-label={`Take out: ${faultWords(fault)}`}
                onClick={() => onChange(faults.filter((_, other) => other !== position))}
              >
                Take out
              </Button>
            </li>
          ))}
        </ul>
      )}
      <label className="block">
        <span className="label-small block">Kind of fault</span>
        <select
          value={kind}
          onChange={(event) => {
            const next = kindNames.find((name) => name === event.target.value);
            if (next !== undefined) setKind(next);
          }}
          className={control}
        >
          {kindNames.map((name) => (
            <option key={name} value={name}>
              {kinds[name].title}
            </option>
          ))}
        </select>
      </label>
      <label className="block">
        <span className="label-small block">Place</span>
        <select value={chosen ?? ""} onChange={(event) => setPlace(event.target.value)} className={control}>
          {offered.map((one) => (
            <option key={one.place} value={one.place}>
              {one.title}
            </option>
          ))}
        </select>
      </label>
      {usual !== undefined && (
        <label className="block">
          <span className="label-small block">Resistance, Ω</span>
          <input
            inputMode="decimal"
            value={ohms}
            placeholder={String(usual)}
            aria-invalid={!(amount > 0) || undefined}
            onChange={(event) => setOhms(event.target.value)}
            className={control}
          />
        </label>
      )}
      <Button
        disabled={!canAdd}
        onClick={() => {
          if (chosen !== undefined) onChange([...faults, makeFault(kind, chosen, amount)]);
        }}
      >
        Put it in
      </Button>
      {faults.length >= 3 && <p className="text-sm">Three at a time are enough; take one out first.</p>}
    </div>
  );
}
