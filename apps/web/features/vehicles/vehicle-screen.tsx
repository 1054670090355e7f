"use client";

import { Tabs } from "@/components/tabs";
import { ServiceInformation } from "@/features/service-information/service-information";
import type { VehicleView } from "./vehicles-view";

/** The service information of each system, as learners find it in the bay. */
export function VehicleScreen({ view }: { readonly view: VehicleView }) {
  return (
    <Tabs
      label="Systems"
      items={view.systems.map(({ id, service }) => ({
        value: id,
        label: service.systemTitle,
        content: <ServiceInformation service={service} />,
      }))}
    />
  );
}
