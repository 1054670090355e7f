import "server-only";
import type { Sheet, TitleBlock } from "@probeworthy/diagram";

/** What stands in the title block of a sheet that leaves the product as a file. */
export const titleBlockOf = (sheet: Sheet, vehicleTitle: string): TitleBlock => ({
  title: sheet.title,
  lines: [
    { label: "Vehicle", value: vehicleTitle },
    { label: "State", value: "Car in order" },
  ],
});
