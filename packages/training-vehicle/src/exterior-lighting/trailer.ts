import type { ComponentOf } from "@probeworthy/vehicle";
import { cavities, type HarnessPart, wire } from "../harness";
import { lamp } from "./lamps";

/** Contacts of the socket (ISO 11446) that a small trailer uses, each with its twin in the trailer's plug. */
const ways = ["L", "R", "54", "58L", "58R", "31"] as const;
const pairs = ways.map((way): [string, string] => [way, `T${way}`]);

/** Plug and socket: joined while a trailer is coupled. */
const coupling: ComponentOf<"switch"> = {
  kind: "switch",
  id: "S11",
  title: "Trailer socket with plug",
  place: "below the rear bumper",
  zone: "tailCentre",
  terminals: pairs.flat(),
  condition: "trailer",
  positions: { none: [], coupled: pairs },
  contactOhms: 0.012,
};

const onTrailer = "on the trailer";

/** The socket in the car's tail harness, and the lamps of a small trailer behind it. */
export const trailerSocket: HarnessPart = {
  components: [
    coupling,
    lamp("E30", "Trailer indicator, left", onTrailer, "tailLeft", 21),
    lamp("E31", "Trailer indicator, right", onTrailer, "tailRight", 21),
    lamp("E32", "Trailer brake lamp, left", onTrailer, "tailLeft", 21),
    lamp("E33", "Trailer brake lamp, right", onTrailer, "tailRight", 21),
    lamp("E34", "Trailer tail lamp, left", onTrailer, "tailLeft", 5),
    lamp("E35", "Trailer tail lamp, right", onTrailer, "tailRight", 5),
  ],
  connectors: [
    {
      id: "X150",
      title: "Trailer socket, thirteen-way",
      place: "below the rear bumper",
      zone: "tailCentre",
      housing: "black, thirteen-way, ISO 11446",
      rows: 1,
      columns: 13,
      component: "S11",
      // 2 rear fog, 8 reversing, 9 to 13 feeds of a caravan: not used by this car.
      cavities: cavities(["L", "", "31", "R", "58R", "54", "58L", "", "", "", "", "", ""]),
    },
  ],
  splices: [{ id: "XS19", title: "Trailer ground", place: "trailer frame", zone: "tailCentre" }],
  conductors: [
    wire("W250", "X130.4", "X150.1", "BUWH", 0.75, 0.9),
    wire("W251", "X131.4", "X150.4", "BUGN", 0.75, 0.9),
    wire("W252", "XS38", "X150.6", "OG", 1, 0.9),
    wire("W253", "XS23", "X150.7", "GYBK", 0.5, 0.9),
    wire("W254", "X131.2", "X150.5", "GYBU", 0.5, 0.9),
    wire("W255", "X150.3", "XE6", "BK", 2.5, 0.9),
    wire("W256", "S11:TL", "E30:1", "YE", 1.5, 3),
    wire("W257", "S11:TR", "E31:1", "GN", 1.5, 3.5),
    wire("W258", "S11:T54", "E32:1", "RD", 1.5, 3),
    wire("W259", "S11:T54", "E33:1", "RD", 1.5, 3.5),
    wire("W260", "S11:T58L", "E34:1", "BK", 1.5, 3),
    wire("W261", "S11:T58R", "E35:1", "BN", 1.5, 3.5),
    wire("W262", "E30:2", "XS19", "WH", 1.5, 0.5),
    wire("W263", "E31:2", "XS19", "WH", 1.5, 0.8),
    wire("W264", "E32:2", "XS19", "WH", 1.5, 0.5),
    wire("W265", "E33:2", "XS19", "WH", 1.5, 0.8),
    wire("W266", "E34:2", "XS19", "WH", 1.5, 0.5),
    wire("W267", "E35:2", "XS19", "WH", 1.5, 0.8),
    wire("W268", "XS19", "S11:T31", "WH", 2.5, 3),
  ],
};
