import type { ReactNode } from "react";
import { Button } from "@/components/button";
import type { ServiceView } from "@/features/service-information/service-view";

export interface ConnectorSheetProps {
  readonly connector: ServiceView["connectors"][number];
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
      <div className="overflow-x-auto">
        <table className="w-full text-left text-sm">
          <caption className="sr-only">Cavities of {connector.id}</caption>
          <thead className="border-b border-ink">
            <tr>
              <th scope="col" className="py-1 pr-3">
                Cavity
              </th>
              <th scope="col" className="py-1 pr-3">
                Function
              </th>
              <th scope="col" className="py-1">
                Conductor
              </th>
            </tr>
          </thead>
          <tbody>
            {connector.cavities.map((cavity) => (
              <tr key={cavity.cavity} className="border-b border-hairline">
                <td className="py-1 pr-3 font-mono">{cavity.cavity}</td>
                <td className="py-1 pr-3">{cavity.function ?? cavity.terminal ?? "free"}</td>
                <td className="py-1 font-mono">
                  {cavity.conductor === null
                    ? "–"
                    : `${cavity.conductor} ${cavity.colour} ${cavity.squareMillimetres} mm²`}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </div>
  );
}
