import type { ComponentOf, Connector } from "@probeworthy/vehicle";
import { condition, multiply } from "../expressions";
import { cavities, type HarnessPart, wire } from "../harness";
import { pulsesPerKmh } from "./wheel-figures";

const hertz = multiply(condition("roadSpeed"), pulsesPerKmh);

type Zone = NonNullable<Connector["zone"]>;

const active = (id: string, title: string, zone: Zone): ComponentOf<"activeSpeedSensor"> => ({
  kind: "activeSpeedSensor",
  id,
  title,
  place: "in the wheel carrier",
  zone,
  lowAmps: 0.007,
  highAmps: 0.014,
  minimumVolts: 4.5,
  hertz,
});

const passive = (id: string, title: string, zone: Zone): ComponentOf<"passiveSpeedSensor"> => ({
  kind: "passiveSpeedSensor",
  id,
  title,
  place: "in the wheel carrier",
  zone,
  coilOhms: 1150,
  peakVoltsPerHertz: 0.006,
  hertz,
});

const twoWay = (id: string, title: string, component: string, zone: Zone): Connector => ({
  id,
  title,
  component,
  place: "in the wheel arch",
  zone,
  housing: "black, two-way, sealed",
  rows: 1,
  columns: 2,
  cavities: cavities(["1", "2"]),
});

/** Two-wire sensors at all wheels: fed by the module in front, coils behind. */
export const wheelSpeed: HarnessPart = {
  components: [
    active("B20", "Wheel speed sensor, front left", "wheelFrontLeft"),
    active("B21", "Wheel speed sensor, front right", "wheelFrontRight"),
    passive("B22", "Wheel speed sensor, rear left", "wheelRearLeft"),
    passive("B23", "Wheel speed sensor, rear right", "wheelRearRight"),
  ],
  connectors: [
    {
      id: "X220",
      title: "Brake module, sensors",
      place: "engine bay, left",
      zone: "engineBayLeft",
      housing: "grey, ten-way",
      rows: 2,
      columns: 5,
      component: "A3",
      cavities: cavities(["VL", "SL", "VR", "SR", "54", "RL+", "RL-", "RR+", "RR-", ""]),
    },
    twoWay("X221", "Wheel speed sensor, front left", "B20", "wheelFrontLeft"),
    twoWay("X222", "Wheel speed sensor, front right", "B21", "wheelFrontRight"),
    twoWay("X223", "Wheel speed sensor, rear left", "B22", "wheelRearLeft"),
    twoWay("X224", "Wheel speed sensor, rear right", "B23", "wheelRearRight"),
    {
      id: "X225",
      title: "In-line connector, rear wheel sensors",
      place: "under the rear seat, left",
      zone: "rearSeat",
      housing: "black, four-way, sealed",
      rows: 2,
      columns: 2,
      cavities: [{ cavity: "1" }, { cavity: "2" }, { cavity: "3" }, { cavity: "4" }],
    },
  ],
  conductors: [
    wire("W380", "X220.1", "X221.1", "RDGN", 0.5, 0.9),
    wire("W381", "X220.2", "X221.2", "WHGN", 0.5, 0.9),
    wire("W382", "X220.3", "X222.1", "RDBU", 0.5, 2.1),
    wire("W383", "X220.4", "X222.2", "WHBU", 0.5, 2.1),
    wire("W384", "X220.6", "X225.1", "YEBN", 0.5, 3.6),
    wire("W385", "X220.7", "X225.2", "BNYE", 0.5, 3.6),
    wire("W386", "X220.8", "X225.3", "GNBN", 0.5, 3.6),
    wire("W387", "X220.9", "X225.4", "BNGN", 0.5, 3.6),
    wire("W388", "X225.1/b", "X223.1", "YEBN", 0.5, 1.1),
    wire("W389", "X225.2/b", "X223.2", "BNYE", 0.5, 1.1),
    wire("W390", "X225.3/b", "X224.1", "GNBN", 0.5, 1.4),
    wire("W391", "X225.4/b", "X224.2", "BNGN", 0.5, 1.4),
    wire("W392", "XS35", "X201.9/b", "OGBK", 0.75, 1.2),
    wire("W393", "X201.9", "X220.5", "OGBK", 0.75, 2.2),
  ],
};
