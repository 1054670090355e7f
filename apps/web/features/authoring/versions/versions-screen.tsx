"use client";

import { useRouter } from "next/navigation";
import { useState } from "react";
import { Button } from "@/components/button";
import { EmptyState } from "@/components/empty-state";
import { Field } from "@/components/field";
import { Select } from "@/components/inputs";
import { Cell, HeaderCell, Table, TableBody, TableHead, TableRow } from "@/components/table";
import { LocalTime } from "@/features/time/local-time";
import type { VersionsView } from "../authoring-view";
import { ChangeList } from "./change-list";

/** Every published version, and the difference between any two in words. */
export function VersionsScreen({ view }: { readonly view: VersionsView }) {
  const router = useRouter();
  const [from, setFrom] = useState(String(view.from ?? ""));
  const [to, setTo] = useState(String(view.to ?? ""));
  if (view.versions.length === 0)
    return <EmptyState title="No version yet">The first one is made by Publish in the workspace.</EmptyState>;
  const numbers = view.versions.map(({ number }) => number);
  const choice = (label: string, value: string, onChange: (value: string) => void) => (
    <Field label={label} className="w-40">
      <Select value={value} onChange={(event) => onChange(event.target.value)}>
        {numbers.map((number) => (
          <option key={number} value={number}>
            version {number}
          </option>
        ))}
      </Select>
    </Field>
  );
  return (
    <div className="grid gap-x-12 gap-y-10 lg:grid-cols-2">
      <section aria-labelledby="versions-list">
        <h2 id="versions-list">Versions</h2>
        <Table caption="Versions of this vehicle" captionHidden>
          <TableHead>
            <tr>
              <HeaderCell numeric>Version</HeaderCell>
              <HeaderCell>Published</HeaderCell>
              <HeaderCell>By</HeaderCell>
              <HeaderCell>File</HeaderCell>
            </tr>
          </TableHead>
          <TableBody>
            {view.versions.map(({ number, createdAt, createdBy }) => (
              <TableRow key={number}>
                <Cell numeric>{number}</Cell>
                <Cell className="whitespace-nowrap">
                  <LocalTime at={createdAt} />
                </Cell>
                <Cell>{createdBy ?? "supplied"}</Cell>
                <Cell>
                  <a
                    href={`/api/vehicles/${view.vehicleId}/export?version=${number}`}
                    download
                    className="link inline-block min-h-6"
                  >
                    JSON<span className="sr-only"> of version {number}</span>
                  </a>
                </Cell>
              </TableRow>
            ))}
          </TableBody>
        </Table>
      </section>
      <section aria-labelledby="versions-compare" className="space-y-3">
        <h2 id="versions-compare">Difference</h2>
        {numbers.length < 2 ? (
          <p>There is one version; a second one can be compared with it.</p>
        ) : (
          <>
            <div className="flex flex-wrap items-end gap-3">
              {choice("From", from, setFrom)}
              {choice("To", to, setTo)}
              <Button
                onClick={() => router.push(`/vehicles/${view.vehicleId}/versions?from=${from}&to=${to}`)}
              >
                Compare
              </Button>
            </div>
            <h3>
              Version {view.from} to version {view.to}
            </h3>
            {view.changes.length === 0 ? <p>They are alike.</p> : <ChangeList changes={view.changes} />}
          </>
        )}
      </section>
    </div>
  );
}
