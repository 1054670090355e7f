"use client";

import { useRouter } from "next/navigation";
import { type FormEvent, useState } from "react";
import { Button } from "@/components/button";
import { CopyButton } from "@/components/copy-button";
import { Field } from "@/components/field";
import { TextArea } from "@/components/inputs";
import { ProblemNotice } from "@/components/problem-notice";
import { postJson } from "@/features/http/api-client";
import { useCall } from "@/features/http/use-call";
import { count } from "@/features/wording/terms";
import { type EnrolAnswer, enrolAnswerSchema, parsePeople } from "./class-input";

const outcomeWords = {
  enrolled: "enrolled",
  already_enrolled: "was on the list already",
  account_made: "account made and enrolled",
  refused: "not enrolled",
} as const;

export function EnrolForm({ classId }: { readonly classId: string }) {
  const router = useRouter();
  const { busy, problem, run } = useCall();
  const [text, setText] = useState("");
  const [errors, setErrors] = useState<string[]>([]);
  const [done, setDone] = useState<EnrolAnswer["people"]>();
  const enrol = async (event: FormEvent) => {
    event.preventDefault();
    const parsed = parsePeople(text);
    if (!parsed.ok || parsed.people.length === 0) {
      setErrors(parsed.ok ? ["Write at least one e-mail address."] : parsed.problems);
      return;
    }
    setErrors([]);
    await run(async () => {
      const answer = await postJson(
        `/api/classes/${classId}/learners`,
        { people: parsed.people },
        enrolAnswerSchema,
      );
      setDone(answer.people);
      setText("");
      router.refresh();
    });
  };
  return (
    <section aria-labelledby="enrol-heading" className="min-w-0 space-y-4 self-start border border-edge p-4">
      <h2 id="enrol-heading">Enrol learners</h2>
      {problem !== undefined && <ProblemNotice problem={problem} />}
      <form onSubmit={(event) => void enrol(event)} noValidate className="space-y-4">
        <Field
          label="Names and e-mail addresses"
          hint="One person a line, as copied from a list: Nia Okonjo, nia@college.example"
          error={
            errors.length === 0 ? undefined : (
              <span>
                {errors.slice(0, 5).map((line) => (
                  <span key={line} className="block">
                    {line}
                  </span>
                ))}
                {errors.length > 5 && <span className="block">and {errors.length - 5} more</span>}
              </span>
            )
          }
        >
          <TextArea
            rows={6}
            value={text}
            onChange={(event) => setText(event.target.value)}
            spellCheck={false}
          />
        </Field>
        <Button type="submit" kind="primary" busy={busy}>
          {busy ? "Enrolling…" : "Enrol"}
        </Button>
      </form>
      <div aria-live="polite">{done !== undefined && <Outcome people={done} />}</div>
    </section>
  );
}

function Outcome({ people }: { readonly people: EnrolAnswer["people"] }) {
  const withPassword = people.filter(({ password }) => password !== undefined);
  return (
    <div className="space-y-3">
      <ul className="border-t border-hairline">
        {people.map((person) => (
          <li key={person.email} className="border-b border-hairline py-1.5">
            <span className="font-semibold break-all">{person.name === "" ? person.email : person.name}</span>
            : {outcomeWords[person.outcome]}
            {person.message !== undefined && <span className="block text-sm">{person.message}</span>}
          </li>
        ))}
      </ul>
      {withPassword.length > 0 && (
        <div className="space-y-3 border-2 border-ink p-3">
          <p>
            <strong>{count(withPassword.length, "first password")}, shown only now.</strong> Copy the list and
            hand each person their own line.
          </p>
          <pre
            id="first-passwords"
            className="overflow-x-auto font-mono text-sm whitespace-pre-wrap break-all"
          >
            {passwordList(withPassword)}
          </pre>
          <CopyButton text={passwordList(withPassword)} label="Copy the list" sourceId="first-passwords" />
        </div>
      )}
    </div>
  );
}

const passwordList = (people: EnrolAnswer["people"]): string =>
  people.map(({ name, email, password }) => [name, email, password].join("\t")).join("\n");
