import type { ServiceConnector } from "./service-view";

/** What each cavity of a connector is for and which conductor is in it. */
export function CavityTable({ connector }: { readonly connector: ServiceConnector }) {
  return (
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
  );
}
