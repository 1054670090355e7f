"use client";

import Link from "next/link";
import { buttonClass } from "@/components/button-class";
import { Tabs } from "@/components/tabs";
import { papersOf } from "@/features/papers/papers-view";
import { SheetViewer } from "@/features/papers/sheet-viewer";
import { LiveDrawing } from "@/features/potentials/live-drawing";
import { ServiceInformation } from "@/features/service-information/service-information";
import type { VehicleView } from "./vehicles-view";

const noLeads = {};
const nothing: readonly never[] = [];

/** The papers of a vehicle as learners find them, and the drawing that shows what a fault does. */
export function VehicleScreen({ view }: { readonly view: VehicleView }) {
  const papers = papersOf("vehicles", view.id);
  const [first] = view.index.systems;
  if (first === undefined) return <p>This vehicle has no system yet.</p>;
  return (
    <Tabs
      label="Papers of the vehicle"
      items={[
        {
          value: "service",
          label: "Service information",
          content: <ServiceInformation service={view.service} papers={papers} />,
        },
        {
          value: "sheets",
          label: "Wiring diagrams",
          content: (
            <SheetViewer
              papers={papers}
              index={view.index}
              initialSystem={first.id}
              points={nothing}
              leads={noLeads}
              unplugged={nothing}
              pulledFuses={nothing}
              tools={
                <Link href={`/papers/vehicles/${view.id}`} className={buttonClass("quiet")}>
                  Print or save
                </Link>
              }
            />
          ),
        },
        {
          value: "live",
          label: "Live drawing",
          content: (
            <LiveDrawing
              papers={papers}
              index={view.index}
              initialSystem={first.id}
              conditions={view.conditions}
              places={view.livePlaces}
            />
          ),
        },
      ]}
    />
  );
}
