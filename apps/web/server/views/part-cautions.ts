import "server-only";
import type { Connector, VehicleDocument } from "@probeworthy/vehicle";

/** From this cross-section on a conductor feeds something that can burn: our own line, drawn between signal and feed. */
const feedSquareMillimetres = 4;
/** From this rating on a fuse guards a feed of that kind. */
const feedFuseAmps = 40;

const disconnectFirst =
  "High-current feed: switch everything off and disconnect the battery's negative clamp first, so that nothing arcs.";
const airbagNear =
  "Near the airbag: switch off, disconnect the battery's negative clamp and wait as long as the vehicle maker says before you touch connectors at the steering column. Never measure on airbag circuits (usually yellow).";

/** What has to be said before this connector is pulled apart at a real car. */
export function connectorCautions(document: VehicleDocument, connector: Connector): string[] {
  const component = document.components.find((candidate) => candidate.id === connector.component);
  const words = `${connector.title} ${connector.place ?? ""} ${component?.title ?? ""} ${component?.place ?? ""}`;
  const ends = (end: string) => end.startsWith(`${connector.id}.`);
  const feeds = document.conductors.some(
    (conductor) =>
      conductor.squareMillimetres >= feedSquareMillimetres && (ends(conductor.from) || ends(conductor.to)),
  );
  return [...(feeds ? [disconnectFirst] : []), ...(/steering|column/i.test(words) ? [airbagNear] : [])];
}

export function fuseCautions(ratingAmps: number): string[] {
  return ratingAmps >= feedFuseAmps ? [disconnectFirst] : [];
}
