import type { ComponentOf } from "../../document/component";
import { isPluggable } from "../../document/part-facts";
import { relayTerminals } from "../../document/vehicle-index";
import { copperOhmsAt } from "../../physics/copper";
import { openOhms } from "../fault-overlay";
import type { NetworkBuilder } from "../network-builder";

/** What the settle needs to know of a relay. */
export interface CompiledRelay {
  readonly id: string;
  readonly coil: string;
  readonly make: string;
  readonly break: string | undefined;
  readonly makeOhms: number;
  readonly breakOhms: number;
  /** Amps through the coil that pull the armature in, and below which it lets go. */
  readonly pullInAmps: number;
  readonly dropOutAmps: number;
  /** A contact that no longer opens. */
  readonly welded: boolean;
}

/** Between a relay's blade and its socket, Ω. Common practice, no source. */
const bladeOhms = 0.0015;
const defaultSuppressorOhms = 680;

/**
 * Coil (copper, at ambient temperature), what lies across it, and the contacts. Where the armature stands is found by
 * the settle and remembered by the state. Pulled out, every blade is apart from its socket.
 */
export function compileRelay(relay: ComponentOf<"relay">, builder: NetworkBuilder): CompiledRelay {
  const { id } = relay;
  const { overlay } = builder;
  const names = relayTerminals(relay);
  const pin = (terminal: string): string => {
    const socket = builder.inside(id, terminal);
    if (!isPluggable(relay)) return socket;
    const blade = builder.node(`${id}:${terminal}#blade`);
    const element = `${id}#blade:${terminal}`;
    builder.resistor(element, socket, blade, bladeOhms);
    builder.update((world, set) => set.ohms(element, world.pulled.has(id) ? openOhms : bladeOhms));
    return blade;
  };
  const plus = pin(names.coilPlus);
  const minus = pin(names.coilMinus);
  const coil = `${id}#coil`;
  builder.resistor(coil, builder.behind(coil, plus), minus, relay.coilOhms);
  const fault = builder.overlay.series.has(coil);
  builder.update((world, set) => set.ohms(coil, copperOhmsAt(relay.coilOhms, world.ambient)));
  if (fault) builder.shape(coil);
  if (relay.suppressor === "resistor")
    builder.resistor(`${id}#suppressor`, plus, minus, relay.suppressorOhms ?? defaultSuppressorOhms);
  if (relay.suppressor === "diode")
    builder.add({ kind: "diode", id: `${id}#suppressor`, anode: minus, cathode: plus });
  if (overlay.reversedDiodes.has(id)) {
    builder.shape(`${id} reversed diode`);
    builder.add({ kind: "diode", id: `${id}#reversed`, anode: plus, cathode: minus, seriesOhms: 0.02 });
  }
  const common = pin(names.common);
  builder.resistor(id, common, pin(names.make), openOhms);
  if (names.break !== undefined) builder.resistor(`${id}#break`, common, pin(names.break), relay.contactOhms);
  return {
    id,
    coil,
    make: id,
    break: names.break === undefined ? undefined : `${id}#break`,
    makeOhms: relay.contactOhms + (overlay.contactOhms.get(id) ?? 0),
    breakOhms: relay.contactOhms,
    pullInAmps: relay.pullInVolts / relay.coilOhms,
    dropOutAmps: relay.dropOutVolts / relay.coilOhms,
    welded: overlay.weldedContacts.has(id),
  };
}
