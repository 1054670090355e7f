"use client";

import { useRouter } from "next/navigation";
import { useId, useState } from "react";
import { z } from "zod";
import { Button } from "@/components/button";
import { Dialog } from "@/components/dialog";
import { Field } from "@/components/field";
import { Select } from "@/components/inputs";
import { ProblemNotice } from "@/components/problem-notice";
import { RowButton } from "@/components/row-button";
import { callApi, postJson } from "@/features/http/api-client";
import { useCall } from "@/features/http/use-call";
import { roleWords } from "@/features/wording/terms";
import { FirstPassword } from "./first-password";
import type { PersonLine } from "./people-view";
import { type PersonChange, roleNames } from "./person-input";

/** Role, password and access of one person. Each change ends that person's sessions. */
export function PersonDialog({ person }: { readonly person: PersonLine }) {
  const router = useRouter();
  const statusId = useId();
  const { busy, problem, run, clear } = useCall();
  const [role, setRole] = useState<PersonLine["role"]>(person.role);
  const [password, setPassword] = useState<string>();
  const [said, setSaid] = useState("");
  const change = (body: PersonChange, done: string) =>
    run(async () => {
      setSaid("");
      await callApi(`/api/people/${person.id}`, { method: "PATCH", body, answer: z.undefined() });
      setSaid(done);
      router.refresh();
    });
  const replace = () =>
    run(async () => {
      const answer = await postJson(
        `/api/people/${person.id}/password`,
        undefined,
        z.strictObject({ password: z.string() }),
      );
      setPassword(answer.password);
    });
  const disabled = person.disabledAt !== null;
  return (
    <Dialog
      title={person.name}
      description={person.email}
      trigger={<RowButton aria-label={`Change ${person.name}`}>Change</RowButton>}
      onOpenChange={(open) => {
        if (open) return;
        setPassword(undefined);
        setSaid("");
        setRole(person.role);
        clear();
      }}
    >
      <div className="space-y-6">
        {problem !== undefined && <ProblemNotice problem={problem} />}
        <p id={statusId} role="status" className="font-semibold empty:hidden">
          {said}
        </p>
        <div className="flex flex-wrap items-end gap-3">
          <Field label="Role" className="min-w-48 flex-1">
            <Select value={role} onChange={(event) => setRole(event.target.value as PersonLine["role"])}>
              {roleNames.map((name) => (
                <option key={name} value={name}>
                  {roleWords[name]}
                </option>
              ))}
            </Select>
          </Field>
          <Button
            busy={busy}
            disabled={role === person.role}
            onClick={() => void change({ role }, `${person.name} is now ${roleWords[role].toLowerCase()}.`)}
          >
            Change the role
          </Button>
        </div>
        {password === undefined ? (
          <div className="space-y-2">
            <p>Forgotten password? A new first password ends every session of this person.</p>
            <Button busy={busy} onClick={() => void replace()}>
              Make a new first password
            </Button>
          </div>
        ) : (
          <FirstPassword password={password} name={person.name} />
        )}
        <div className="space-y-2">
          <p>
            {disabled
              ? "This person cannot sign in."
              : "Shutting out ends every session; work and grades are kept."}
          </p>
          <Button
            kind={disabled ? "quiet" : "danger"}
            busy={busy}
            onClick={() =>
              void change(
                { disabled: !disabled },
                disabled ? `${person.name} may sign in again.` : `${person.name} is shut out.`,
              )
            }
          >
            {disabled ? "Let in again" : "Shut out"}
          </Button>
        </div>
      </div>
    </Dialog>
  );
}
