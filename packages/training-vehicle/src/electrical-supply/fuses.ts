import type { ComponentOf, VehicleDocument } from "@probeworthy/vehicle";
import type { HarnessPart } from "../harness";
import { wire } from "../harness";
import type { SteeringRatings } from "../power-steering/ratings";

type Zone = NonNullable<VehicleDocument["groundPoints"][number]["zone"]>;

const preFuseBox = "pre-fuse box on the battery";
const fuseBox = "fuse box, left end of the dash";
const engineBayBox = "fuse box in the engine bay, left";

type Zoned = { readonly place: string; readonly zone: Zone };
const zoneOf: Readonly<Record<string, Zone>> = {
  [preFuseBox]: "engineBayLeft",
  [engineBayBox]: "engineBayLeft",
  [fuseBox]: "dashLeft",
};
const at = (place: string): Zoned => ({ place, zone: zoneOf[place] ?? "dashLeft" });

const fuse = (
  id: string,
  title: string,
  place: string,
  ratingAmps: number,
  form: ComponentOf<"fuse">["form"],
  coldOhms: number,
): ComponentOf<"fuse"> => ({ kind: "fuse", id, title, ...at(place), ratingAmps, form, coldOhms });

/** The pre-fuse box with its three high-current fuses and the fuse box with the small ones. */
export const fuses = (steering: SteeringRatings): HarnessPart => ({
  components: [
    fuse("F1", "Fuse box supply", preFuseBox, 80, "bolted", 0.0006),
    fuse(
      "F2",
      "Power steering, battery feed",
      preFuseBox,
      steering.fuseAmps,
      steering.fuseForm,
      steering.fuseOhms,
    ),
    fuse("F3", "Alternator", preFuseBox, 125, "bolted", 0.0004),
    fuse("F4", "Engine bay fuse box supply", preFuseBox, 80, "bolted", 0.0006),
    fuse("F25", "Alternator sense", preFuseBox, 5, "F", 0.0168),
    fuse("F31", "Starter relay", engineBayBox, 30, "C", 0.0022),
    fuse("F32", "Horn", engineBayBox, 15, "F", 0.0048),
    fuse("F33", "Light switch supply", fuseBox, 25, "C", 0.0026),
    fuse("F34", "Brake lamps", fuseBox, 15, "F", 0.0048),
    fuse("F35", "Reversing lamps", fuseBox, 10, "F", 0.0074),
    fuse("F36", "Body module, memory", fuseBox, 7.5, "F", 0.0106),
    fuse("F37", "Indicators", fuseBox, 15, "F", 0.0048),
    fuse("F41", "Dipped beam, left", fuseBox, 10, "F", 0.0074),
    fuse("F42", "Dipped beam, right", fuseBox, 10, "F", 0.0074),
    fuse("F43", "Main beam, left", fuseBox, 10, "F", 0.0074),
    fuse("F44", "Main beam, right", fuseBox, 10, "F", 0.0074),
    fuse("F45", "Side and tail lamps, left; number plate", fuseBox, 5, "F", 0.0168),
    fuse("F46", "Side and tail lamps, right", fuseBox, 5, "F", 0.0168),
    fuse("F47", "Body module and steering angle sensor, ignition feed", fuseBox, 5, "F", 0.0168),
    fuse("F11", "Power steering, ignition feed", fuseBox, 10, "F", 0.0074),
    fuse("F12", "Engine module", fuseBox, 10, "F", 0.0074),
    fuse("F13", "Instrument cluster, steering warning lamp", fuseBox, 5, "F", 0.0168),
    fuse("F14", "Brake module", fuseBox, 7.5, "F", 0.0106),
    fuse("F15", "Diagnostic socket", fuseBox, 10, "F", 0.0074),
    fuse("F16", "Ignition switch supply", fuseBox, 25, "C", 0.0026),
    fuse("F17", "Accessory socket", fuseBox, 15, "C", 0.0048),
  ],
  splices: [
    { id: "XS5", title: "Terminal 30 bar of the fuse box", ...at(fuseBox) },
    { id: "XS6", title: "Terminal 15 bar of the fuse box", ...at(fuseBox) },
    { id: "XS8", title: "Terminal 30 bar of the engine bay fuse box", ...at(engineBayBox) },
  ],
  groundPoints: [
    { id: "XE6", title: "Tail ground", place: "boot floor, behind the left lamp", zone: "tailLeft" },
    { id: "XE7", title: "Front ground, right", place: "right inner wing, front", zone: "engineBayRight" },
    { id: "XE8", title: "Front ground, left", place: "left inner wing, front", zone: "engineBayLeft" },
    { id: "XE9", title: "Tail ground, right", place: "boot floor, behind the right lamp", zone: "tailRight" },
  ],
  conductors: [
    wire("W2", "XS1", "F1:1", "RD", 25, 0.03),
    wire("W3", "XS1", "F2:1", "RD", 25, 0.03),
    wire("W4", "XS1", "F3:1", "RD", 25, 0.03),
    wire("W100", "XS1", "F4:1", "RD", 25, 0.03),
    wire("W101", "F4:2", "XS8", "RD", 16, 0.5),
    wire("W12", "F1:2", "XS5", "RD", 16, 1.6),
    wire("W13", "XS5", "F15:1", "RD", 16, 0.04),
    wire("W14", "XS5", "F16:1", "RD", 16, 0.04),
    wire("W15", "XS6", "F11:1", "VT", 2.5, 0.03),
    wire("W16", "XS6", "F12:1", "VT", 2.5, 0.03),
    wire("W17", "XS6", "F13:1", "VT", 2.5, 0.03),
    wire("W18", "XS6", "F14:1", "VT", 2.5, 0.03),
  ],
});
