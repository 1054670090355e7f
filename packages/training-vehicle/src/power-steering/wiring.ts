import { busPair, cavities, type HarnessPart, wire } from "../harness";
import { powerSteeringModule } from "./module";
import type { SteeringRatings } from "./ratings";
import { assistMotor, torqueSensor } from "./sensor-and-motor";

const column = "steering column";

/** Column electric power steering: module, sensor, motor, their connectors and every wire up to fuses, grounds and CAN. */
export const powerSteering = (ratings: SteeringRatings): HarnessPart => ({
  components: [powerSteeringModule(ratings), torqueSensor, assistMotor(ratings)],
  connectors: [
    {
      id: "X10",
      title: "Power steering module, power",
      place: column,
      zone: "column",
      housing: "black, two-way, large blades",
      rows: 1,
      columns: 2,
      component: "A1",
      cavities: [
        { cavity: "1", terminal: "30", contactOhms: 0.0006 },
        { cavity: "2", terminal: "31P", contactOhms: 0.0006 },
      ],
    },
    {
      id: "X11",
      title: "Power steering module, vehicle",
      place: column,
      zone: "column",
      housing: "grey, eight-way",
      rows: 2,
      columns: 4,
      component: "A1",
      cavities: cavities(["CL", "15", "", "31S", "CH", "", "", ""]),
    },
    {
      id: "X12",
      title: "Power steering module, torque sensor",
      place: column,
      zone: "column",
      housing: "white, six-way",
      rows: 2,
      columns: 3,
      component: "A1",
      cavities: cavities(["T1", "TS+", "", "TS-", "T2", ""]),
    },
    {
      id: "X13",
      title: "Power steering module, motor",
      place: column,
      zone: "column",
      housing: "black, two-way",
      rows: 1,
      columns: 2,
      component: "A1",
      cavities: [
        { cavity: "1", terminal: "M+", contactOhms: 0.0008 },
        { cavity: "2", terminal: "M-", contactOhms: 0.0008 },
      ],
    },
    {
      id: "X15",
      title: "Torque sensor",
      place: "lower end of the column",
      zone: "column",
      housing: "white, four-way",
      rows: 1,
      columns: 4,
      component: "B1",
      cavities: cavities(["0V", "S1", "S2", "5V"]),
    },
    {
      id: "X31",
      title: "In-line connector, dash to column harness",
      place: "left of the column, behind the knee panel",
      zone: "column",
      housing: "natural, six-way",
      rows: 2,
      columns: 3,
      cavities: [{ cavity: "1" }, { cavity: "2" }, { cavity: "4" }, { cavity: "5" }],
    },
  ],
  splices: [
    { id: "XS3", title: "Dash ground splice", place: "dash harness, left", zone: "dashLeft" },
    {
      id: "XS11",
      title: "CAN high splice, dash",
      place: "dash harness, above the pedals",
      zone: "bulkheadLeft",
    },
    {
      id: "XS12",
      title: "CAN low splice, dash",
      place: "dash harness, above the pedals",
      zone: "bulkheadLeft",
    },
  ],
  groundPoints: [
    {
      id: "XE3",
      title: "Power steering power ground",
      place: "dash cross member, behind the column",
      zone: "dashCentre",
    },
    { id: "XE4", title: "Dash ground", place: "foot of the left front pillar", zone: "dashLeft" },
  ],
  conductors: [
    wire("W20", "F2:2", "X10.1", "RDGY", ratings.feedSquareMillimetres, 1.9),
    wire("W21", "X10.2", "XE3", "BK", ratings.feedSquareMillimetres, 0.55),
    wire("W22", "F11:2", "X31.1", "VTYE", 0.75, 0.6),
    wire("W23", "X31.1/b", "X11.2", "VTYE", 0.75, 0.5),
    wire("W24", "X11.4", "X31.2/b", "BKWH", 0.75, 0.5),
    wire("W25", "X31.2", "XS3", "BKWH", 0.75, 0.4),
    wire("W26", "XS3", "XE4", "BKWH", 2.5, 0.35),
    ...busPair(["W27", "W28"], ["X11.5", "X11.1"], ["X31.4/b", "X31.5/b"], 0.5),
    ...busPair(["W29", "W30"], ["X31.4", "X31.5"], ["XS11", "XS12"], 0.4),
    wire("W31", "X12.2", "X15.4", "PK", 0.35, 0.4),
    wire("W32", "X12.4", "X15.1", "PKBK", 0.35, 0.4),
    wire("W33", "X12.1", "X15.2", "WHGN", 0.35, 0.4),
    wire("W34", "X12.5", "X15.3", "WHOG", 0.35, 0.4),
    wire("W35", "X13.1", "M1:1", "YE", ratings.motorSquareMillimetres, 0.3),
    wire("W36", "X13.2", "M1:2", "YEBK", ratings.motorSquareMillimetres, 0.3),
  ],
});
