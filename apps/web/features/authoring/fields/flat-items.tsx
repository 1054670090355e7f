"use client";

import { useDraftActions } from "../draft/draft-context";
import { useFieldMessage } from "../draft/messages";
import { formatPath, moveAt, type Path, removeAt } from "../draft/path";
import { FieldControl, type LeafSpec } from "./field-control";
import type { FieldSpec, ListSpec } from "./field-spec";
import type { DraftRecord } from "./new-record";
import { Said } from "./said";
import { SmallButton } from "./small-button";

const recordOf = (value: unknown): DraftRecord =>
  typeof value === "object" && value !== null ? (value as DraftRecord) : {};

/** Leaf kinds that fit into one cell of a table. */
const slim: readonly FieldSpec["type"][] = ["text", "number", "choice", "expression"];

/** Items of one shape with few small fields are rows of a table, not forms of their own. */
export const isFlat = ({ shapes }: ListSpec): boolean => {
  const [shape, ...others] = shapes;
  if (shape === undefined || others.length > 0 || shape.fields.length > 4) return false;
  return shape.fields.every(({ type }) => slim.includes(type));
};

interface FlatItemsProps {
  readonly spec: ListSpec;
  readonly items: readonly unknown[];
  readonly path: Path;
  readonly owner: DraftRecord;
  readonly name: string;
}

export function FlatItems({ spec, items, path, owner, name }: FlatItemsProps) {
  const { edit } = useDraftActions();
  const fields = (spec.shapes[0]?.fields ?? []) as readonly LeafSpec[];
  const label = `${name}, ${spec.label.toLowerCase()}`;
  if (items.length === 0) return null;
  return (
    <table className="w-full border-collapse text-left">
      <thead className="border-b border-ink align-bottom text-sm">
        <tr>
          {fields.map((field) => (
            <th key={field.key} scope="col" className="px-2 font-semibold" title={field.hint}>
              {field.label}
              {field.type === "number" && field.unit !== undefined && `, ${field.unit}`}
            </th>
          ))}
          <th>
            <span className="sr-only">Actions</span>
          </th>
        </tr>
      </thead>
      <tbody>
        {items.map((item, index) => {
          const own = [...path, index];
          const itemName = String(recordOf(item)[spec.nameKey] ?? "") || `${index + 1}`;
          const move = (to: number) => edit((draft) => moveAt(draft, path, index, to), `${label}, order`);
          return (
            <tr
              key={formatPath(own)}
              data-path={formatPath(own)}
              className="border-b border-hairline align-top"
            >
              {fields.map((field) => (
                <FlatCell
                  key={field.key}
                  spec={field}
                  path={[...own, field.key]}
                  value={recordOf(item)[field.key]}
                  owner={owner}
                  name={`${spec.item} ${itemName}`}
                />
              ))}
              <td className="px-2 text-sm whitespace-nowrap">
                <span className="flex justify-end gap-3">
                  {index > 0 && (
                    <SmallButton label={`Move ${spec.item} ${itemName} up`} onClick={() => move(index - 1)}>
                      Up
                    </SmallButton>
                  )}
                  <SmallButton
                    label={`Remove ${spec.item} ${itemName}`}
                    onClick={() => edit((draft) => removeAt(draft, path, index), label)}
                  >
                    Remove
                  </SmallButton>
                </span>
              </td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}

interface FlatCellProps {
  readonly spec: LeafSpec;
  readonly path: Path;
  readonly value: unknown;
  readonly owner: DraftRecord;
  readonly name: string;
}

function FlatCell({ spec, path, value, owner, name }: FlatCellProps) {
  const { write } = useDraftActions();
  const message = useFieldMessage(path);
  return (
    <td data-path={formatPath(path)} className="p-0">
      <FieldControl
        spec={spec}
        value={value}
        owner={owner}
        compact
        label={`${spec.label} of ${name}`}
        invalid={message !== undefined}
        onChange={(next) => write(path, next, `${name}, ${spec.label.toLowerCase()}`)}
      />
      <Said message={message} />
    </td>
  );
}
