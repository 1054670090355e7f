import Link from "next/link";
import { EmptyState } from "@/components/empty-state";
import { Cell, HeaderCell, Table, TableBody, TableHead, TableRow } from "@/components/table";
import type { ClassesView } from "./classes-view";

export function ClassList({ classes }: { readonly classes: ClassesView["classes"] }) {
  if (classes.length === 0) {
    return (
      <EmptyState title="No class yet">
        Make one with “New class”. Then enrol learners by e-mail address and hand out a scenario.
      </EmptyState>
    );
  }
  return (
    <Table caption="Classes" captionHidden>
      <TableHead>
        <tr>
          <HeaderCell>Class</HeaderCell>
          <HeaderCell>Term</HeaderCell>
          <HeaderCell numeric>Learners</HeaderCell>
          <HeaderCell numeric>Assignments</HeaderCell>
        </tr>
      </TableHead>
      <TableBody>
        {classes.map(({ id, title, term, learners, assignments }) => (
          <TableRow key={id}>
            <HeaderCell scope="row">
              <Link href={`/classes/${id}`} className="link inline-block min-h-6">
                {title}
              </Link>
            </HeaderCell>
            <Cell>{term}</Cell>
            <Cell numeric>{learners}</Cell>
            <Cell numeric>{assignments}</Cell>
          </TableRow>
        ))}
      </TableBody>
    </Table>
  );
}
