"use client";

import { Checkbox, Select } from "@/components/inputs";
import { RowButton } from "@/components/row-button";
import { emptyAsNull } from "@/features/forms/form-values";
import { useDraft } from "../draft/draft-context";
import { looseTerminals, optionsOf } from "./draft-facts";
import { type DraftRecord, recordsOf } from "./new-record";
import { TextControl } from "./text-control";

interface OwnedProps {
  readonly value: unknown;
  readonly onChange: (value: unknown) => void;
  readonly owner: DraftRecord;
}

const asRecord = (value: unknown): DraftRecord =>
  typeof value === "object" && value !== null ? (value as DraftRecord) : {};
const asList = (value: unknown): readonly unknown[] => (Array.isArray(value) ? (value as unknown[]) : []);

/** Two places: terminals of the component or its inner nodes. */
export function PairControl({ value, onChange, owner, label }: OwnedProps & { readonly label: string }) {
  const pair = asList(value);
  const nodes = [...looseTerminals(owner), ...asList(owner.innerNodes).map(String)];
  return (
    <div className="flex items-center gap-2">
      {([0, 1] as const).map((side) => {
        const chosen = String(pair[side] ?? "");
        return (
          <Select
            key={side}
            aria-label={`${label}, ${side === 0 ? "first" : "second"}`}
            value={chosen}
            onChange={(event) =>
              onChange(side === 0 ? [event.target.value, pair[1] ?? ""] : [pair[0] ?? "", event.target.value])
            }
            className="font-mono"
          >
            {!nodes.includes(chosen) && <option value={chosen}>{chosen === "" ? "choose" : chosen}</option>}
            {nodes.map((node) => (
              <option key={node} value={node}>
                {node}
              </option>
            ))}
          </Select>
        );
      })}
    </div>
  );
}

/** Every pair of terminals as a box to tick, for every position of the condition that works the switch. */
export function PositionsControl({ value, onChange, owner }: OwnedProps) {
  const draft = useDraft();
  const options = optionsOf(draft, String(owner.condition ?? ""));
  const terminals = looseTerminals(owner);
  if (options === undefined)
    return <p className="text-ink-soft">Choose the condition first; it is declared under Conditions.</p>;
  const positions = asRecord(value);
  const pairs = terminals.flatMap((first, index) =>
    terminals.slice(index + 1).map((second) => [first, second] as const),
  );
  return (
    <table className="border-collapse">
      <thead>
        <tr className="border-b border-ink text-left">
          <th scope="col" className="pr-6">
            Position
          </th>
          <th scope="col">Joined</th>
        </tr>
      </thead>
      <tbody>
        {options.map((option) => {
          const joined = asList(positions[option]).map(asList);
          const write = (next: readonly unknown[]) =>
            onChange(
              Object.fromEntries(options.map((one) => [one, one === option ? next : asList(positions[one])])),
            );
          return (
            <tr key={option} className="border-b border-hairline">
              <th scope="row" className="pr-6 font-mono font-normal">
                {option}
              </th>
              <td>
                <span className="flex flex-wrap gap-x-6">
                  {pairs.map(([first, second]) => {
                    const isPair = (pair: readonly unknown[]) =>
                      pair.includes(first) && pair.includes(second) && first !== second;
                    return (
                      <Checkbox
                        key={`${first} ${second}`}
                        label={
                          <span className="font-mono">
                            {first} – {second}
                          </span>
                        }
                        aria-label={`${option}: ${first} joined with ${second}`}
                        checked={joined.some(isPair)}
                        onChange={(event) =>
                          write(
                            event.target.checked
                              ? [...joined, [first, second]]
                              : joined.filter((pair) => !isPair(pair)),
                          )
                        }
                      />
                    );
                  })}
                </span>
              </td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}

/** Ground, supply, or one of the module's own sensor supplies. */
export function PullToControl({ value, onChange, owner }: OwnedProps) {
  const rails = asList(owner.rails).map((rail) => String(asRecord(rail).name ?? ""));
  const rail = asRecord(value).rail;
  const text = typeof value === "string" ? value : rail === undefined ? "" : `rail ${String(rail)}`;
  const options = ["ground", "supply", ...rails.map((name) => `rail ${name}`)];
  return (
    <Select
      aria-label="Resistor to"
      value={text}
      onChange={(event) => {
        const chosen = event.target.value;
        onChange(chosen.startsWith("rail ") ? { rail: chosen.slice(5) } : chosen);
      }}
    >
      {!options.includes(text) && <option value={text}>{text === "" ? "choose" : text}</option>}
      <option value="ground">its ground</option>
      <option value="supply">its supply</option>
      {rails.map((name) => (
        <option key={name} value={`rail ${name}`}>
          sensor supply {name}
        </option>
      ))}
    </Select>
  );
}

/** How the car stands: only the conditions that matter are set. */
export function ConditionValuesControl({ value, onChange }: Omit<OwnedProps, "owner">) {
  const draft = useDraft();
  const values = asRecord(value);
  const conditions = recordsOf(draft, "conditions");
  const free = conditions.filter(({ name }) => !Object.hasOwn(values, String(name)));
  const without = (name: string) =>
    Object.fromEntries(Object.entries(values).filter(([key]) => key !== name));
  return (
    <div className="space-y-2">
      {Object.entries(values).map(([name, own]) => {
        const options = optionsOf(draft, name);
        return (
          <div key={name} className="flex items-center gap-2">
            <code className="min-w-24">{name}</code>
            {options === undefined ? (
              <TextControl
                label={`Value of ${name}`}
                decimal
                value={own}
                fromText={emptyAsNull}
                onChange={(next) => onChange({ ...values, [name]: next })}
              />
            ) : (
              <Select
                aria-label={`Value of ${name}`}
                value={String(own)}
                onChange={(event) => onChange({ ...values, [name]: event.target.value })}
              >
                {!options.includes(String(own)) && (
                  <option value={String(own)}>{String(own)} (not known)</option>
                )}
                {options.map((option) => (
                  <option key={option} value={option}>
                    {option}
                  </option>
                ))}
              </Select>
            )}
            <RowButton aria-label={`Remove ${name}: as usual`} onClick={() => onChange(without(name))}>
              Remove
            </RowButton>
          </div>
        );
      })}
      {free.length > 0 && (
        <Select
          aria-label="Set a condition"
          value=""
          onChange={(event) => {
            const condition = free.find(({ name }) => name === event.target.value);
            if (condition !== undefined)
              onChange({ ...values, [String(condition.name)]: condition.initial ?? null });
          }}
        >
          <option value="">
            {Object.keys(values).length === 0 ? "as usual; set a condition" : "set another"}
          </option>
          {free.map(({ name, title }) => (
            <option key={String(name)} value={String(name)}>
              {String(title ?? name)}
            </option>
          ))}
        </Select>
      )}
    </div>
  );
}
