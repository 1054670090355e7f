"use client";

import { Button } from "@/components/button";
import { Field } from "@/components/field";
import { Select } from "@/components/inputs";
import { useDraftActions } from "../draft/draft-context";
import { useFieldMessage } from "../draft/messages";
import { formatPath, insertAt, moveAt, type Path, removeAt, setAt } from "../draft/path";
import { FieldControl, type LeafSpec } from "./field-control";
import type { FieldSpec, GroupSpec, ListSpec } from "./field-spec";
import { FlatItems, isFlat } from "./flat-items";
import type { DraftRecord } from "./new-record";
import { Said } from "./said";
import { SmallButton } from "./small-button";

interface FormProps {
  readonly path: Path;
  /** What stands at the path. */
  readonly value: unknown;
  /** The component, connector … all of it belongs to. */
  readonly owner: DraftRecord;
  /** Said in the undo button: `F1`. */
  readonly name: string;
}

const asRecord = (value: unknown): DraftRecord =>
  typeof value === "object" && value !== null ? (value as DraftRecord) : {};

const wide: readonly FieldSpec["type"][] = [
  "list",
  "group",
  "positions",
  "points",
  "expression",
  "lines",
  "longText",
];

/** A form made from descriptions: small fields side by side, the larger ones over the whole width. */
export function FieldList({ specs, ...form }: FormProps & { readonly specs: readonly FieldSpec[] }) {
  return (
    <div className="grid grid-cols-[repeat(auto-fill,minmax(11rem,1fr))] items-end gap-x-4 gap-y-3">
      {specs.map((spec) => (
        <div key={spec.key} className={wide.includes(spec.type) ? "col-span-full" : ""}>
          <FieldOf
            {...form}
            spec={spec}
            path={[...form.path, spec.key]}
            value={asRecord(form.value)[spec.key]}
          />
        </div>
      ))}
    </div>
  );
}

function FieldOf({ spec, ...form }: FormProps & { readonly spec: FieldSpec }) {
  if (spec.type === "group") return <GroupField {...form} spec={spec} />;
  if (spec.type === "list") return <ListField {...form} spec={spec} />;
  return <LeafField {...form} spec={spec} />;
}

/** Kinds of control that are more than one input: a legend names them. */
const several: readonly FieldSpec["type"][] = ["positions", "points", "conditionValues", "pair"];

function LeafField({ spec, path, value, owner, name }: FormProps & { readonly spec: LeafSpec }) {
  const { write } = useDraftActions();
  const message = useFieldMessage(path);
  const onChange = (next: unknown) => write(path, next, `${name}, ${spec.label.toLowerCase()}`);
  const control = <FieldControl spec={spec} value={value} owner={owner} onChange={onChange} />;
  const hint = spec.hint;
  const unit = spec.type === "number" && spec.unit !== undefined ? `, ${spec.unit}` : "";
  if (spec.type === "flag") return <div data-path={formatPath(path)}>{control}</div>;
  if (several.includes(spec.type)) {
    return (
      <fieldset data-path={formatPath(path)}>
        <legend className="font-semibold">{spec.label}</legend>
        {hint !== undefined && <p className="text-sm text-ink-soft">{hint}</p>}
        <div className="mt-1">{control}</div>
        <Said message={message} />
      </fieldset>
    );
  }
  return (
    <div data-path={formatPath(path)}>
      <Field label={`${spec.label}${unit}`} hint={hint} error={message}>
        {control}
      </Field>
    </div>
  );
}

function GroupField({ spec, path, value, owner, name }: FormProps & { readonly spec: GroupSpec }) {
  const { edit } = useDraftActions();
  const message = useFieldMessage(path, true);
  const isThere = value !== undefined && value !== null;
  return (
    <fieldset data-path={formatPath(path)} className="border-l-2 border-hairline pl-4">
      <legend className="font-semibold">{spec.label}</legend>
      <Said message={message} />
      {isThere && <FieldList specs={spec.fields} path={path} value={value} owner={owner} name={name} />}
      {spec.optional === true && (
        <Button
          className="mt-2"
          aria-label={`${isThere ? "Remove" : "Add"}: ${spec.label}`}
          onClick={() =>
            edit(
              (draft) => setAt(draft, path, isThere ? undefined : (spec.start ?? {})),
              `${name}, ${spec.label.toLowerCase()}`,
            )
          }
        >
          {isThere ? "Remove" : "Add"}
        </Button>
      )}
    </fieldset>
  );
}

function ListField({ spec, path, value, owner, name }: FormProps & { readonly spec: ListSpec }) {
  const { edit } = useDraftActions();
  const message = useFieldMessage(path, true);
  const items = Array.isArray(value) ? (value as readonly unknown[]) : [];
  const label = `${name}, ${spec.label.toLowerCase()}`;
  const add = (kind: string) => {
    const shape = spec.shapes.find((one) => (one.kind ?? "") === kind) ?? spec.shapes[0];
    if (shape === undefined) return;
    const item = { ...(shape.kind === undefined ? {} : { kind: shape.kind }), ...shape.start };
    edit((draft) => insertAt(draft, path, [item]), label);
  };
  return (
    <details
      data-path={formatPath(path)}
      open={items.length > 0 && items.length <= 12}
      className="border-l-2 border-hairline pl-4"
    >
      <summary className="min-h-9 cursor-pointer py-1 font-semibold">
        {spec.label} <span className="font-mono font-normal text-ink-soft">({items.length})</span>
      </summary>
      <Said message={message} />
      {isFlat(spec) ? (
        <FlatItems spec={spec} items={items} path={path} owner={owner} name={name} />
      ) : (
        <ol className="space-y-3">
          {items.map((item, index) => {
            const record = asRecord(item);
            const shape = spec.shapes.find(({ kind }) => kind === undefined || kind === record.kind);
            const own = [...path, index];
            const itemName = String(record[spec.nameKey] ?? "") || `${index + 1}`;
            const move = (to: number) => edit((draft) => moveAt(draft, path, index, to), `${label}, order`);
            return (
              <li key={index} data-path={formatPath(own)} className="border border-hairline p-3">
                <div className="mb-2 flex flex-wrap items-center justify-between gap-2">
                  <p className="label-small">
                    {shape?.kind === undefined ? "" : `${shape.label}, `}
                    <code>{itemName}</code>
                  </p>
                  <span className="flex gap-3 text-sm">
                    {index > 0 && (
                      <SmallButton label={`Move ${spec.item} ${itemName} up`} onClick={() => move(index - 1)}>
                        Up
                      </SmallButton>
                    )}
                    {index < items.length - 1 && (
                      <SmallButton
                        label={`Move ${spec.item} ${itemName} down`}
                        onClick={() => move(index + 1)}
                      >
                        Down
                      </SmallButton>
                    )}
                    <SmallButton
                      label={`Remove ${spec.item} ${itemName}`}
                      onClick={() => edit((draft) => removeAt(draft, path, index), label)}
                    >
                      Remove
                    </SmallButton>
                  </span>
                </div>
                {shape === undefined ? (
                  <p>
                    This {spec.item} has a kind that is not known here: {String(record.kind)}.
                  </p>
                ) : (
                  <FieldList
                    specs={shape.fields}
                    path={own}
                    value={item}
                    owner={owner}
                    name={`${name} ${itemName}`}
                  />
                )}
              </li>
            );
          })}
        </ol>
      )}
      {spec.shapes.length > 1 ? (
        <Select
          aria-label={`Add a ${spec.item}`}
          className="mt-2 max-w-xs"
          value=""
          onChange={(event) => add(event.target.value)}
        >
          <option value="">Add a {spec.item} …</option>
          {spec.shapes.map((shape) => (
            <option key={shape.kind} value={shape.kind}>
              {shape.label}
            </option>
          ))}
        </Select>
      ) : (
        <Button className="mt-2" onClick={() => add("")}>
          Add {/^[aeiou]/.test(spec.item) ? "an" : "a"} {spec.item}
        </Button>
      )}
    </details>
  );
}
