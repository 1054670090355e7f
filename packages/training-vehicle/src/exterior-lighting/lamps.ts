import type { ComponentOf, VehicleDocument } from "@probeworthy/vehicle";

type Zone = NonNullable<VehicleDocument["groundPoints"][number]["zone"]>;

export const lamp = (
  id: string,
  title: string,
  place: string,
  zone: Zone,
  ratedWatts: number,
): ComponentOf<"lamp"> => ({ kind: "lamp", id, title, place, zone, ratedVolts: 12, ratedWatts });

/** Dipped 55 W and main 60 W in one bulb with a common ground pin. */
const headlamp = (id: string, title: string, place: string, zone: Zone): ComponentOf<"twoFilamentLamp"> => ({
  kind: "twoFilamentLamp",
  id,
  title,
  place,
  zone,
  terminals: { common: "31", first: "56b", second: "56a" },
  ratedVolts: 12,
  firstWatts: 55,
  secondWatts: 60,
});

/** Tail 5 W and brake 21 W in one bulb; the cap is the common ground. */
const tailBulb = (id: string, title: string, place: string, zone: Zone): ComponentOf<"twoFilamentLamp"> => ({
  kind: "twoFilamentLamp",
  id,
  title,
  place,
  zone,
  terminals: { common: "31", first: "58", second: "54" },
  ratedVolts: 12,
  firstWatts: 5,
  secondWatts: 21,
});

const frontLeft = "left headlamp unit";
const frontRight = "right headlamp unit";
const tailLeft = "left tail lamp unit";
const tailRight = "right tail lamp unit";

export const lamps: VehicleDocument["components"] = [
  headlamp("E3", "Headlamp, left", frontLeft, "engineBayLeft"),
  headlamp("E4", "Headlamp, right", frontRight, "engineBayRight"),
  lamp("E5", "Side lamp, front left", frontLeft, "engineBayLeft", 5),
  lamp("E6", "Side lamp, front right", frontRight, "engineBayRight", 5),
  lamp("E7", "Indicator, front left", frontLeft, "engineBayLeft", 21),
  lamp("E8", "Indicator, front right", frontRight, "engineBayRight", 21),
  lamp("E9", "Side repeater, left", "left front wing", "wheelFrontLeft", 5),
  lamp("E10", "Side repeater, right", "right front wing", "wheelFrontRight", 5),
  tailBulb("E11", "Tail and brake lamp, left", tailLeft, "tailLeft"),
  tailBulb("E12", "Tail and brake lamp, right", tailRight, "tailRight"),
  lamp("E13", "Indicator, rear left", tailLeft, "tailLeft", 21),
  lamp("E14", "Indicator, rear right", tailRight, "tailRight", 21),
  lamp("E15", "Reversing lamp, left", tailLeft, "tailLeft", 21),
  lamp("E16", "Reversing lamp, right", tailRight, "tailRight", 21),
  lamp("E17", "Number plate lamp", "tailgate handle", "tailCentre", 5),
  {
    kind: "ledLamp",
    id: "E18",
    title: "High brake lamp, LED unit",
    place: "top of the tailgate",
    zone: "tailCentre",
    forwardVolts: 8.4,
    ratedVolts: 12.5,
    ratedAmps: 0.22,
  },
];
