"use client";

import { Field } from "@/components/field";
import { TextArea, TextInput } from "@/components/inputs";

export interface JsonFile {
  readonly text: string;
  /** What the text says, when it can be read. */
  readonly document?: unknown;
  readonly error?: string;
}

/** Reads a text as JSON; where it breaks off is said in lines as an editor counts them. */
export function readJson(text: string): JsonFile {
  if (text.trim() === "") return { text };
  try {
    return { text, document: JSON.parse(text) };
  } catch (error) {
    if (!(error instanceof SyntaxError)) throw error;
    const position = /position (\d+)/.exec(error.message)?.[1];
    const line = position === undefined ? undefined : text.slice(0, Number(position)).split("\n").length;
    const where = line === undefined ? "" : ` Look at line ${line}.`;
    return { text, error: `This is no JSON that can be read.${where}` };
  }
}

interface JsonFieldsProps {
  readonly file: JsonFile;
  readonly error: string | undefined;
  readonly onChange: (file: JsonFile) => void;
}

export function JsonFields({ file, error, onChange }: JsonFieldsProps) {
  return (
    <div className="space-y-4">
      <Field label="JSON file" required={false}>
        <TextInput
          type="file"
          accept=".json,application/json"
          onChange={async (event) => {
            const chosen = event.target.files?.[0];
            if (chosen !== undefined) onChange(readJson(await chosen.text()));
          }}
        />
      </Field>
      <Field
        label="Vehicle as JSON"
        hint={
          <>
            Filled from the file, or paste it here.{" "}
            <a href="/api/vehicle-schema" className="link" download>
              JSON Schema
            </a>
          </>
        }
        error={error ?? file.error}
      >
        <TextArea
          rows={10}
          wrap="off"
          spellCheck={false}
          className="font-mono text-sm"
          value={file.text}
          onChange={(event) => onChange(readJson(event.target.value))}
        />
      </Field>
    </div>
  );
}
