"use client";

import { useDraft } from "../draft/draft-context";
import { FieldList } from "../fields/field-list";
import { longText, number, text } from "../fields/field-spec";

const fields = [
  text("title", "Name", { hint: "As scenarios and learners see it." }),
  number("nominalVolts", "Nominal voltage", "V", { hint: "12 for a car." }),
  longText("description", "Description", { hint: "What it stands for: body, engine, year." }),
];

/** What the vehicle is as a whole. */
export function VehicleSection() {
  const draft = useDraft();
  return <FieldList specs={fields} path={[]} value={draft} owner={draft} name="Vehicle" />;
}
