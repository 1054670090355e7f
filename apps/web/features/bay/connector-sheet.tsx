import type { ReactNode } from "react";
import { Button } from "@/components/button";
import { CavityTable } from "@/features/service-information/cavity-table";
import type { ServiceConnector } from "@/features/service-information/service-view";

export interface ConnectorSheetProps {
  readonly connector: ServiceConnector;
  readonly unplugged: boolean;
  readonly face: ReactNode;
  readonly notice: ReactNode;
  readonly onPlug: () => void;
  readonly onUnplug: () => void;
}

/** One connector: where it sits, its face, its pin table, and the button that parts it. */
export function ConnectorSheet({
  connector,
  unplugged,
  face,
  notice,
  onPlug,
  onUnplug,
}: ConnectorSheetProps) {
  return (
    <div className="min-w-0 space-y-3">
      <div className="flex flex-wrap items-start justify-between gap-3">
        <div>
          <h3>
            {connector.id} {connector.title}
          </h3>
          <p className="text-sm text-ink-soft">
            {[connector.place, connector.housing, unplugged ? "unplugged" : "plugged in"]
              .filter(Boolean)
              .join(" · ")}
          </p>
        </div>
        {unplugged ? (
          <Button onClick={onPlug}>Plug {connector.id} back</Button>
        ) : (
          <Button onClick={onUnplug}>Unplug {connector.id}</Button>
        )}
      </div>
      {notice}
      {face}
      <CavityTable connector={connector} />
    </div>
  );
}
