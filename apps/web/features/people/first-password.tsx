import { CopyButton } from "@/components/copy-button";

const passwordId = "first-password";

/** Shown once; afterwards only its hash exists. */
export function FirstPassword({ password, name }: { readonly password: string; readonly name: string }) {
  return (
    <div className="space-y-3 border-2 border-ink p-3">
      <p>
        <strong>The first password of {name}, shown only now.</strong>
      </p>
      <p id={passwordId} data-testid="first-password" className="font-mono text-lg">
        {password}
      </p>
      <CopyButton text={password} label="Copy it" sourceId={passwordId} />
    </div>
  );
}
