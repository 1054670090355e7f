import type { Connector } from "@probeworthy/vehicle";
import { cavities, type HarnessPart, wire } from "../harness";

const twoWay = (
  id: string,
  title: string,
  component: string,
  place: string,
  zone: NonNullable<Connector["zone"]>,
): Connector => ({
  id,
  title,
  place,
  zone,
  housing: "black, two-way, sealed",
  rows: 1,
  columns: 2,
  component,
  cavities: cavities(["1", "2"]),
});

const headlampConnector = (
  id: string,
  title: string,
  component: string,
  place: string,
  zone: NonNullable<Connector["zone"]>,
): Connector => ({
  id,
  title,
  place,
  zone,
  housing: "black, three-way",
  rows: 1,
  columns: 3,
  component,
  cavities: cavities(["56b", "31", "56a"]),
});

const left = ["left headlamp unit", "engineBayLeft"] as const;
const right = ["right headlamp unit", "engineBayRight"] as const;

/** From the dash fuses through the bulkhead to both headlamp units; each unit has one ground for all its lamps. */
export const frontLamps: HarnessPart = {
  connectors: [
    {
      id: "X100",
      title: "In-line connector, bulkhead, front lamps",
      place: "bulkhead, left, beside X30",
      zone: "bulkheadLeft",
      housing: "white, sixteen-way",
      rows: 2,
      columns: 8,
      cavities: Array.from({ length: 13 }, (_, index) => ({ cavity: String(index + 1) })),
    },
    headlampConnector("X115", "Headlamp, left", "E3", ...left),
    headlampConnector("X116", "Headlamp, right", "E4", ...right),
    twoWay("X117", "Side lamp, front left", "E5", ...left),
    twoWay("X118", "Side lamp, front right", "E6", ...right),
    twoWay("X119", "Indicator, front left", "E7", ...left),
    twoWay("X120", "Indicator, front right", "E8", ...right),
    twoWay("X121", "Side repeater, left", "E9", "left front wing", "wheelFrontLeft"),
    twoWay("X122", "Side repeater, right", "E10", "right front wing", "wheelFrontRight"),
  ],
  splices: [
    {
      id: "XS24",
      title: "Front ground splice, left",
      place: "headlamp harness, left",
      zone: "engineBayLeft",
    },
    {
      id: "XS25",
      title: "Front ground splice, right",
      place: "headlamp harness, right",
      zone: "engineBayRight",
    },
    { id: "XS26", title: "Indicator splice, front left", place: "engine bay harness", zone: "engineBayLeft" },
    {
      id: "XS27",
      title: "Indicator splice, front right",
      place: "engine bay harness",
      zone: "engineBayRight",
    },
  ],
  conductors: [
    wire("W150", "F41:2", "X100.3/b", "YEBK", 1.5, 0.7),
    wire("W151", "X100.3", "X115.1", "YEBK", 1.5, 1.2),
    wire("W152", "F42:2", "X100.4/b", "YEBU", 1.5, 0.7),
    wire("W153", "X100.4", "X116.1", "YEBU", 1.5, 2.3),
    wire("W154", "F43:2", "X100.5/b", "WHBK", 1.5, 0.7),
    wire("W155", "X100.5", "X115.3", "WHBK", 1.5, 1.2),
    wire("W156", "F44:2", "X100.6/b", "WHBU", 1.5, 0.7),
    wire("W157", "X100.6", "X116.3", "WHBU", 1.5, 2.3),
    wire("W158", "F45:2", "XS28", "GYBK", 0.75, 0.1),
    wire("W159", "XS28", "X100.7/b", "GYBK", 0.5, 0.7),
    wire("W160", "X100.7", "X117.1", "GYBK", 0.5, 1.2),
    wire("W161", "F46:2", "XS29", "GYBU", 0.75, 0.1),
    wire("W162", "XS29", "X100.8/b", "GYBU", 0.5, 0.7),
    wire("W163", "X100.8", "X118.1", "GYBU", 0.5, 2.3),
    wire("W164", "XS30", "X100.9/b", "BUWH", 0.75, 0.8),
    wire("W165", "X100.9", "XS26", "BUWH", 0.75, 0.8),
    wire("W166", "XS26", "X119.1", "BUWH", 0.75, 0.5),
    wire("W167", "XS26", "X121.1", "BUWH", 0.5, 0.7),
    wire("W168", "XS31", "X100.10/b", "BUGN", 0.75, 0.8),
    wire("W169", "X100.10", "XS27", "BUGN", 0.75, 1.9),
    wire("W170", "XS27", "X120.1", "BUGN", 0.75, 0.5),
    wire("W171", "XS27", "X122.1", "BUGN", 0.5, 0.7),
    wire("W172", "X115.2", "XS24", "BK", 1.5, 0.25),
    wire("W173", "X117.2", "XS24", "BK", 0.5, 0.25),
    wire("W174", "X119.2", "XS24", "BK", 0.75, 0.25),
    wire("W175", "XS24", "XE8", "BK", 2.5, 0.3),
    wire("W176", "X116.2", "XS25", "BK", 1.5, 0.25),
    wire("W177", "X118.2", "XS25", "BK", 0.5, 0.25),
    wire("W178", "X120.2", "XS25", "BK", 0.75, 0.25),
    wire("W179", "XS25", "XE7", "BK", 2.5, 0.3),
    wire("W180", "X121.2", "XE8", "BK", 0.5, 0.6),
    wire("W181", "X122.2", "XE7", "BK", 0.5, 0.6),
  ],
};
