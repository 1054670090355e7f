import { Fragment } from "react";
import { Icon } from "@/components/icon";
import { Cell, HeaderCell, Table, TableBody, TableHead, TableRow } from "@/components/table";
import type { PreviewView } from "./builder-view";

type Situation = PreviewView["situations"][number];

/** Variants across, what is broken and what shows of it down. */
export function PreviewTable({ previews }: { readonly previews: readonly PreviewView[] }) {
  const situations = previews[0]?.situations ?? [];
  return (
    <Table caption="Drawn variants side by side" captionHidden>
      <TableHead>
        <tr>
          <HeaderCell className="min-w-36">
            <span className="sr-only">What</span>
          </HeaderCell>
          {previews.map(({ seed, title }, index) => (
            <HeaderCell key={seed} className="min-w-60">
              <span className="label-small block font-normal">Variant {index + 1}</span>
              {title}
            </HeaderCell>
          ))}
        </tr>
      </TableHead>
      <TableBody>
        <TableRow>
          <HeaderCell scope="row">Drawn fault</HeaderCell>
          {previews.map(({ seed, faults }) => (
            <Cell key={seed} className="font-mono text-sm">
              {faults.length === 0 ? "none" : faults.map((fault) => <p key={fault}>{fault}</p>)}
            </Cell>
          ))}
        </TableRow>
        <TableRow>
          <HeaderCell scope="row">The customer says</HeaderCell>
          {previews.map(({ seed, complaint }) => (
            <Cell key={seed}>“{complaint}”</Cell>
          ))}
        </TableRow>
        <TableRow>
          <HeaderCell scope="row">Also drawn</HeaderCell>
          {previews.map(({ seed, conditions }) => (
            <Cell key={seed}>{conditions.length === 0 ? "nothing" : conditions.join("; ")}</Cell>
          ))}
        </TableRow>
        {situations.map(({ title }, index) => (
          <Fragment key={title}>
            <TableRow>
              <HeaderCell scope="row">{title}</HeaderCell>
              {previews.map(({ seed, situations: own }) => (
                <Cell key={seed}>
                  <Noticed situation={own[index]} />
                  <Codes situation={own[index]} />
                </Cell>
              ))}
            </TableRow>
          </Fragment>
        ))}
      </TableBody>
    </Table>
  );
}

/** What is out of the ordinary first and marked; the rest is small. */
function Noticed({ situation }: { readonly situation: Situation | undefined }) {
  if (situation === undefined) return null;
  const unusual = situation.noticed.filter(({ normal }) => !normal);
  const usual = situation.noticed.filter(({ normal }) => normal);
  return (
    <>
      {unusual.map(({ id, title, text }) => (
        <p key={id} className="flex items-start gap-1.5 font-semibold">
          <Icon name="warning" className="mt-1 size-4" />
          <span>
            {title}: {text}
          </span>
        </p>
      ))}
      {usual.map(({ id, title, text }) => (
        <p key={id} className="text-sm text-ink-soft">
          {title}: {text}
        </p>
      ))}
    </>
  );
}

function Codes({ situation }: { readonly situation: Situation | undefined }) {
  const silent = situation?.modules.filter(({ answered }) => !answered) ?? [];
  const codes = situation?.modules.flatMap(({ id, codes: own }) => own.map((code) => `${id}: ${code}`)) ?? [];
  return (
    <div className="mt-1 border-t border-hairline pt-1 text-sm">
      {codes.map((code) => (
        <p key={code} className="font-mono">
          {code}
        </p>
      ))}
      {codes.length === 0 && <p className="text-ink-soft">no codes</p>}
      {silent.length > 0 && <p>no answer from {silent.map(({ id }) => id).join(", ")}</p>}
    </div>
  );
}
