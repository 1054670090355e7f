import { Icon } from "@/components/icon";

/** What is wrong with a field that is more than one control. */
export function Said({ message }: { readonly message: string | undefined }) {
  if (message === undefined) return null;
  return (
    <p className="mt-1 flex items-start gap-1.5 text-sm font-semibold">
      <Icon name="warning" className="mt-0.5 size-4" />
      {message}
    </p>
  );
}
