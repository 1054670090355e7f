"use client";

import { Button } from "@/components/button";
import { RowButton } from "@/components/row-button";
import { emptyAsNull } from "@/features/forms/form-values";
import { parseCells } from "../table/paste";
import { CurvePlot } from "./curve-plot";
import { TextControl } from "./text-control";

interface PointsControlProps {
  readonly value: unknown;
  readonly onChange: (value: unknown) => void;
  readonly columns: readonly [string, string];
}

/** Pairs of numbers as a small table with a plot beside it; two columns can be pasted from a spreadsheet. */
export function PointsControl({ value, onChange, columns }: PointsControlProps) {
  const points: readonly (readonly unknown[])[] = Array.isArray(value)
    ? value.map((point: unknown) => (Array.isArray(point) ? (point as unknown[]) : []))
    : [];
  const write = (row: number, column: number, next: unknown) =>
    onChange(points.map((point, index) => (index === row ? replaced(point, column, next) : point)));
  const paste = (row: number, text: string) => {
    const rows = parseCells(text).map((cells) => cells.slice(0, 2).map(emptyAsNull));
    onChange([...points.slice(0, row), ...rows, ...points.slice(row + rows.length)]);
  };
  return (
    <div className="flex flex-wrap items-start gap-6">
      <div>
        <table>
          <thead>
            <tr className="border-b border-ink">
              {columns.map((column) => (
                <th key={column} scope="col" className="px-2 text-right font-mono">
                  {column}
                </th>
              ))}
              <th>
                <span className="sr-only">Remove</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {points.map((point, row) => (
              <tr key={row} className="border-b border-hairline">
                {([0, 1] as const).map((column) => (
                  <td key={column} className="w-28">
                    <TextControl
                      compact
                      decimal
                      label={`Point ${row + 1}, ${columns[column]}`}
                      value={point[column]}
                      fromText={emptyAsNull}
                      onChange={(next) => write(row, column, next)}
                      onPaste={(event) => {
                        const text = event.clipboardData.getData("text/plain");
                        if (!/[\t\n]/.test(text.trim())) return;
                        event.preventDefault();
                        paste(row, text);
                      }}
                    />
                  </td>
                ))}
                <td className="pl-2">
                  <RowButton
                    aria-label={`Remove point ${row + 1}`}
                    onClick={() => onChange(points.filter((_, index) => index !== row))}
                  >
                    Remove
                  </RowButton>
                </td>
              </tr>
            ))}
          </tbody>
        </table>
        <Button className="mt-2" onClick={() => onChange([...points, [null, null]])}>
          Add a point
        </Button>
      </div>
      <CurvePlot points={points} columns={columns} />
    </div>
  );
}

const replaced = (point: readonly unknown[], column: number, next: unknown): unknown[] =>
  column === 0 ? [next, point[1] ?? null] : [point[0] ?? null, next];
