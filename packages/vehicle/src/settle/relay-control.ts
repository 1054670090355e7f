import type { OperatingPoint } from "@probeworthy/circuit";
import type { CompiledRelay } from "../compile/components/relay";
import { openOhms } from "../compile/fault-overlay";
import type { ElementSetter } from "../compile/network-builder";

/** How often a relay may let go within one settle before it is left released: one that starves its own coil chatters. */
const releasesAllowed = 3;

/**
 * Where a relay's armature stands. It pulls in at its pull-in current, lets go below its drop-out current and stays where
 * it is in between, so that the answer depends on where it stood before.
 */
export class RelayControl {
  private releases = 0;

  constructor(
    private readonly relay: CompiledRelay,
    public pulledIn: boolean,
    set: ElementSetter,
  ) {
    this.write(set);
  }

  get id(): string {
    return this.relay.id;
  }

  /** True when the armature has moved and the circuit has to be solved again. */
  update(point: OperatingPoint, set: ElementSetter): boolean {
    const { relay } = this;
    const amps = Math.abs(point.amps(relay.coil));
    const pulls = !this.pulledIn && amps >= relay.pullInAmps && this.releases < releasesAllowed;
    const lets = this.pulledIn && amps < relay.dropOutAmps;
    if (!pulls && !lets) return false;
    if (lets) this.releases += 1;
    this.pulledIn = pulls;
    this.write(set);
    return true;
  }

  private write(set: ElementSetter): void {
    const { relay } = this;
    const made = this.pulledIn || relay.welded;
    set.ohms(relay.make, made ? relay.makeOhms : openOhms);
    if (relay.break !== undefined) set.ohms(relay.break, made ? openOhms : relay.breakOhms);
  }
}
