import "server-only";
import {
  checkChart,
  parseChart,
  prepareVehicle,
  terminalChart,
  type VehicleDocument,
} from "@probeworthy/vehicle";
import { checkDraft } from "@probeworthy/vehicle/authoring";
import type { DraftChart } from "@/features/authoring/authoring-view";

const refuse = (reason: string, errors: readonly { path: string; message: string }[] = []): DraftChart => ({
  computed: false,
  reason,
  errors: [...errors],
});

const finite = (value: number): number | null => (Number.isFinite(value) ? value : null);

/** Measures a chart on a draft: the rows of its own system, or a manual's chart given as text. */
export function chartDraft(draft: unknown, systemId: string, csv: string | null): DraftChart {
  const { document, messages } = checkDraft(draft);
  if (document === undefined) {
    const count = messages.length;
    return refuse(
      `Nothing can be measured before the vehicle is complete: ${count} ${count === 1 ? "message" : "messages"} left.`,
    );
  }
  return csv === null ? ownRows(document, systemId) : manualsChart(document, csv);
}

function ownRows(document: VehicleDocument, systemId: string): DraftChart {
  const prepared = prepareVehicle(document);
  if (!prepared.ok) return refuse(words(prepared.error));
  const chart = terminalChart(prepared.value, systemId);
  if (!chart.ok) return refuse(words(chart.error));
  return {
    computed: true,
    rows: chart.value.map(({ row, value, unit }) => ({
      point: row.point,
      against: row.against ?? null,
      function: row.function,
      condition: row.conditionTitle,
      value: finite(value),
      unit,
      expected: null,
      agrees: null,
      message: "",
    })),
  };
}

function manualsChart(document: VehicleDocument, csv: string): DraftChart {
  const chart = parseChart(csv, document);
  if (!chart.ok) {
    const errors = chart.error.map(({ line, column, message }) => ({
      path: column === "" ? `line ${line}` : `line ${line}, ${column}`,
      message,
    }));
    return refuse("The chart cannot be read.", errors);
  }
  const prepared = prepareVehicle(document);
  if (!prepared.ok) return refuse(words(prepared.error));
  const checked = checkChart(prepared.value, chart.value);
  if (!checked.ok) return refuse(words(checked.error));
  return {
    computed: true,
    rows: checked.value.map(({ row, agrees, value, unit, expected, message }) => ({
      point: row.point,
      against: row.against ?? null,
      function: row.function,
      condition: row.conditionText,
      value: finite(value),
      unit,
      expected,
      agrees,
      message,
    })),
  };
}

const words = (
  error: { readonly code: string } | { readonly code: string; readonly message: string },
): string => ("message" in error ? error.message : error.code);
