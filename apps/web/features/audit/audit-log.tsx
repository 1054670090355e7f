import Link from "next/link";
import { Button } from "@/components/button";
import { buttonClass } from "@/components/button-class";
import { EmptyState } from "@/components/empty-state";
import { Field } from "@/components/field";
import { Select } from "@/components/inputs";
import { Cell, HeaderCell, Table, TableBody, TableHead, TableRow } from "@/components/table";
import { LocalTime } from "@/features/time/local-time";
import { type AuditView, auditedTypes } from "./audit-view";

export interface AuditLogProps {
  readonly view: AuditView;
  readonly filter: { readonly type?: string | undefined; readonly actor?: string | undefined };
}

export function AuditLog({ view, filter }: AuditLogProps) {
  const older = new URLSearchParams();
  if (filter.type !== undefined) older.set("type", filter.type);
  if (filter.actor !== undefined) older.set("actor", filter.actor);
  if (view.nextBefore !== null) older.set("before", view.nextBefore);
  return (
    <div className="space-y-6">
      <form method="get" className="no-print flex flex-wrap items-end gap-4">
        <Field label="About" className="min-w-48">
          <Select name="type" defaultValue={filter.type ?? ""}>
            <option value="">everything</option>
            {auditedTypes.map((type) => (
              <option key={type} value={type}>
                {type}
              </option>
            ))}
          </Select>
        </Field>
        <Field label="By" className="min-w-48">
          <Select name="actor" defaultValue={filter.actor ?? ""}>
            <option value="">everybody</option>
            {view.people.map((person) => (
              <option key={person.id} value={person.id}>
                {person.name}
              </option>
            ))}
          </Select>
        </Field>
        <Button type="submit">Show</Button>
      </form>
      {view.entries.length === 0 ? (
        <EmptyState title="No such entry">
          Choose something else above, or wait until somebody does something.
        </EmptyState>
      ) : (
        <Table caption="Log entries, newest first" captionHidden>
          <TableHead>
            <tr>
              <HeaderCell>When</HeaderCell>
              <HeaderCell>Who</HeaderCell>
              <HeaderCell>What</HeaderCell>
              <HeaderCell>Detail</HeaderCell>
            </tr>
          </TableHead>
          <TableBody>
            {view.entries.map((entry) => (
              <TableRow key={entry.id}>
                <Cell className="whitespace-nowrap">
                  <LocalTime at={entry.at} />
                </Cell>
                <Cell className="max-w-48 break-words">{entry.actorName ?? "the system"}</Cell>
                <Cell>
                  <code>{entry.action}</code>
                </Cell>
                <Cell className="max-w-2xl text-sm break-words">{entry.detail}</Cell>
              </TableRow>
            ))}
          </TableBody>
        </Table>
      )}
      {view.nextBefore !== null && (
        <Link href={`/people/log?${older}`} className={buttonClass("quiet")}>
          Older entries
        </Link>
      )}
    </div>
  );
}
