"use client";

import { zones } from "@probeworthy/vehicle";
import clsx from "clsx";
import { Checkbox, Select } from "@/components/inputs";
import { emptyAsNull } from "@/features/forms/form-values";
import { ExpressionControl } from "./expression-control";
import type { ChoiceSpec, FieldSpec, GroupSpec, ListSpec, OtherSpec } from "./field-spec";
import type { DraftRecord } from "./new-record";
import { PointsControl } from "./points-control";
import { ConditionValuesControl, PairControl, PositionsControl, PullToControl } from "./special-controls";
import { cellClass, TextControl } from "./text-control";

export type LeafSpec = Exclude<FieldSpec, GroupSpec | ListSpec>;

export interface FieldControlProps {
  readonly spec: LeafSpec;
  readonly value: unknown;
  /** `undefined` takes the property out. */
  readonly onChange: (value: unknown) => void;
  /** The component, connector … the field belongs to. */
  readonly owner: DraftRecord;
  readonly label?: string;
  readonly invalid?: boolean;
  readonly compact?: boolean;
}

export const zoneWords = (zone: string): string =>
  zone.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);

const splitNames = (text: string): string[] => text.split(/[\s,;]+/).filter(Boolean);
const joinNames = (value: unknown): string => (Array.isArray(value) ? value.join(" ") : "");
const splitLines = (text: string): string[] => (text === "" ? [] : text.split("\n"));
const joinLines = (value: unknown): string => (Array.isArray(value) ? value.join("\n") : "");

/** The control for one property, whatever its kind. */
export function FieldControl({ spec, owner, onChange, compact = false, ...rest }: FieldControlProps) {
  const optional = spec.optional === true;
  const change = (value: unknown) =>
    onChange(optional && (value === "" || value === null || isEmptyList(value)) ? undefined : value);
  const control = { ...rest, onChange: change };
  const text = { ...control, compact };
  switch (spec.type) {
    case "text":
    case "longText":
      if (spec.suggest === "zones")
        return <ChoiceControl {...text} optional={optional} options={zoneOptions} />;
      return (
        <TextControl
          {...text}
          multiline={spec.type === "longText"}
          code={spec.code === true}
          {...(spec.suggest === undefined ? {} : { listId: listIdOf(spec.suggest, owner) })}
        />
      );
    case "number":
      return (
        <TextControl
          {...text}
          decimal
          fromText={(typed) => {
            const read = emptyAsNull(typed);
            return optional && read === null ? undefined : read;
          }}
        />
      );
    case "choice":
      return <ChoiceControl {...text} optional={optional} options={(spec as ChoiceSpec).options} />;
    case "names":
      return <TextControl {...text} code toText={joinNames} fromText={splitNames} />;
    case "lines":
      return <TextControl {...text} multiline toText={joinLines} fromText={splitLines} />;
    case "expression":
      return <ExpressionControl {...text} optional={optional} inModule={spec.inModule === true} />;
    case "points":
      return <PointsControl {...control} columns={(spec as OtherSpec).columns ?? ["x", "y"]} />;
    case "pair":
      return <PairControl {...control} owner={owner} label={spec.label} />;
    case "positions":
      return <PositionsControl {...control} owner={owner} />;
    case "pullTo":
      return <PullToControl {...control} owner={owner} />;
    case "conditionValues":
      return <ConditionValuesControl {...control} />;
    case "flag":
      return (
        <Checkbox
          label={spec.label}
          checked={rest.value === true}
          onChange={(event) => onChange(event.target.checked ? true : optional ? undefined : false)}
        />
      );
  }
}

const isEmptyList = (value: unknown): boolean => Array.isArray(value) && value.length === 0;

/** Lists of the draft stand once in the page; those of one component beside its form. */
export const listIdOf = (suggest: string, owner: DraftRecord): string =>
  suggest === "ownTerminals" ? `offer-terminals-${String(owner.id)}` : `offer-${suggest}`;

const zoneOptions = zones.map((zone) => ({ value: zone, label: zoneWords(zone) }));

interface ChoiceControlProps {
  readonly value: unknown;
  readonly onChange: (value: unknown) => void;
  readonly options: ChoiceSpec["options"];
  readonly optional: boolean;
  readonly compact: boolean;
  readonly label?: string;
  readonly invalid?: boolean;
}

function ChoiceControl({ value, onChange, options, optional, compact, label, invalid }: ChoiceControlProps) {
  const text = typeof value === "string" ? value : "";
  const known = text === "" || options.some((option) => option.value === text);
  const props = {
    value: text,
    onChange: (event: { target: { value: string } }) => onChange(event.target.value),
    ...(label === undefined ? {} : { "aria-label": label }),
    ...(invalid === true ? { "aria-invalid": true as const } : {}),
  };
  const inner = (
    <>
      {(optional || text === "") && <option value="">{optional ? "not said" : "choose"}</option>}
      {!known && <option value={text}>{text} (not known)</option>}
      {options.map((option) => (
        <option key={option.value} value={option.value}>
          {option.label}
        </option>
      ))}
    </>
  );
  return compact ? (
    <select {...props} className={clsx(cellClass)}>
      {inner}
    </select>
  ) : (
    <Select {...props}>{inner}</Select>
  );
}
