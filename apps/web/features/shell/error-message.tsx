import { Button } from "@/components/button";

export interface ErrorMessageProps {
  /** Ties what the person sees to the line in the server's log. */
  readonly digest: string | undefined;
  readonly retry: () => void;
}

export function ErrorMessage({ digest, retry }: ErrorMessageProps) {
  return (
    <div role="alert">
      <h1>Something went wrong on our side</h1>
      <p className="mt-2 max-w-prose">
        Every reading you had taken is kept. Try again; if it happens again, tell your administrator
        {digest === undefined ? "." : " this number:"}
      </p>
      {digest !== undefined && <p className="mt-1 font-mono text-lg">{digest}</p>}
      <Button kind="primary" onClick={retry} className="mt-6">
        Try again
      </Button>
    </div>
  );
}
