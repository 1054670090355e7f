"use client";

import { useState } from "react";
import { Field } from "@/components/field";
import { TextInput } from "@/components/inputs";
import { Cell, HeaderCell, Table, TableBody, TableHead, TableRow } from "@/components/table";
import { Tag } from "@/components/tag";
import { LocalTime } from "@/features/time/local-time";
import { count, roleWords } from "@/features/wording/terms";
import type { PersonLine } from "./people-view";
import { PersonDialog } from "./person-dialog";

export function PeopleTable({ people }: { readonly people: readonly PersonLine[] }) {
  const [query, setQuery] = useState("");
  const words = query.toLowerCase().split(/\s+/).filter(Boolean);
  const shown = people.filter(({ name, email, role }) => {
    const text = `${name} ${email} ${roleWords[role]}`.toLowerCase();
    return words.every((word) => text.includes(word));
  });
  return (
    <div className="space-y-4">
      <Field label="Search" className="max-w-md">
        <TextInput
          type="search"
          value={query}
          onChange={(event) => setQuery(event.target.value)}
          placeholder="Name, address or role"
        />
      </Field>
      <p role="status" className="text-sm text-ink-soft">
        {count(shown.length, "person", "people")}
      </p>
      <Table caption="People" captionHidden>
        <TableHead>
          <tr>
            <HeaderCell>Name</HeaderCell>
            <HeaderCell>E-mail</HeaderCell>
            <HeaderCell>Role</HeaderCell>
            <HeaderCell>Added</HeaderCell>
            <HeaderCell>State</HeaderCell>
            <HeaderCell>
              <span className="sr-only">Change</span>
            </HeaderCell>
          </tr>
        </TableHead>
        <TableBody>
          {shown.map((person) => (
            <TableRow key={person.id}>
              <HeaderCell scope="row" className="max-w-64 break-words">
                {person.name}
                {person.isSelf && <span className="font-normal text-ink-soft"> (you)</span>}
              </HeaderCell>
              <Cell className="max-w-72 break-all">{person.email}</Cell>
              <Cell>{roleWords[person.role]}</Cell>
              <Cell className="whitespace-nowrap">
                <LocalTime at={person.createdAt} />
              </Cell>
              <Cell>
                <Tag state={person.disabledAt === null ? "done" : "closed"}>
                  {person.disabledAt === null ? "May sign in" : "Shut out"}
                </Tag>
              </Cell>
              <Cell className="text-right">
                <PersonDialog person={person} />
              </Cell>
            </TableRow>
          ))}
        </TableBody>
      </Table>
    </div>
  );
}
