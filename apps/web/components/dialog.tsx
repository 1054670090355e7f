"use client";

import { Dialog as Radix } from "radix-ui";
import type { ReactNode } from "react";
import { Icon } from "./icon";

export interface DialogProps {
  readonly title: ReactNode;
  /** One sentence read aloud when it opens. */
  readonly description?: ReactNode;
  /** A button that opens it; leave out when `open` is controlled from elsewhere. */
  readonly trigger?: ReactNode;
  readonly open?: boolean;
  readonly onOpenChange?: (open: boolean) => void;
  readonly children?: ReactNode;
  /** Buttons, the main one last. Wrap one that closes in <DialogClose>. */
  readonly actions?: ReactNode;
}

export function Dialog({ title, description, trigger, open, onOpenChange, children, actions }: DialogProps) {
  return (
    <Radix.Root
      {...(open === undefined ? {} : { open })}
      {...(onOpenChange === undefined ? {} : { onOpenChange })}
    >
      {trigger !== undefined && <Radix.Trigger asChild>{trigger}</Radix.Trigger>}
      <Radix.Portal>
        <Radix.Overlay className="fixed inset-0 z-40 bg-shade" />
        <Radix.Content
          {...(description === undefined ? { "aria-describedby": undefined } : {})}
          className="fixed top-1/2 left-1/2 z-50 flex max-h-[calc(100dvh-2rem)] w-[min(36rem,calc(100vw-2rem))] -translate-x-1/2 -translate-y-1/2 flex-col border-2 border-ink bg-paper"
        >
          <div className="flex items-start justify-between gap-4 border-b border-hairline p-5 pb-3">
            <div>
              <Radix.Title className="text-xl font-semibold">{title}</Radix.Title>
              {description !== undefined && (
                <Radix.Description className="mt-1 text-ink-soft">{description}</Radix.Description>
              )}
            </div>
            <Radix.Close
              aria-label="Close"
              className="-mt-2 -mr-2 inline-flex size-11 shrink-0 cursor-pointer items-center justify-center hover:bg-panel"
            >
              <Icon name="cross" />
            </Radix.Close>
          </div>
          {children !== undefined && <div className="overflow-y-auto p-5">{children}</div>}
          {actions !== undefined && (
            <div className="flex flex-wrap justify-end gap-3 border-t border-hairline p-5 pt-3">
              {actions}
            </div>
          )}
        </Radix.Content>
      </Radix.Portal>
    </Radix.Root>
  );
}

/** Wraps a button so that it closes the dialog it stands in. */
export function DialogClose({ children }: { readonly children: ReactNode }) {
  return <Radix.Close asChild>{children}</Radix.Close>;
}
