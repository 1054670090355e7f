import type { ComponentOf, VehicleDocument } from "@probeworthy/vehicle";

/** Where the assist motor sits: it decides how strong motor, feed and fuse are. */
export const steeringPlacements = ["column", "pinion", "rack"] as const;
export type SteeringPlacement = (typeof steeringPlacements)[number];

export interface SteeringRatings {
  /** Title and place of the motor in shop words, and its field of the place plan. */
  readonly motorPlace: string;
  readonly zone: NonNullable<VehicleDocument["groundPoints"][number]["zone"]>;
  /** Winding with its brushes at 20 °C, Ω. */
  readonly windingOhmsAt20: number;
  readonly torquePerAmp: number; // N·m/A
  readonly gear: NonNullable<ComponentOf<"motor">["gear"]>;
  /** Motor current for the torque at the wheel: N·m → A, before speed and temperature are looked at. */
  readonly assistCurve: readonly (readonly [number, number])[];
  readonly fuseAmps: number;
  readonly fuseForm: ComponentOf<"fuse">["form"];
  readonly fuseOhms: number;
  /** Feed and power ground, and the motor leads, mm². */
  readonly feedSquareMillimetres: number;
  readonly motorSquareMillimetres: number;
  readonly heat: Omit<NonNullable<ComponentOf<"motor">["heat"]>, "ambientCondition">;
}

/** Ratings of the three placements. All invented: a motor further down works against more force and is stronger. */
export const steeringRatings: Readonly<Record<SteeringPlacement, SteeringRatings>> = {
  column: {
    motorPlace: "on the steering column gearbox",
    zone: "column",
    windingOhmsAt20: 0.18,
    torquePerAmp: 0.043,
    gear: { ratio: 18, efficiency: 0.82 },
    assistCurve: [
      [0.6, 0],
      [2, 8],
      [4, 22],
      [6, 37],
      [8, 47],
      [9.5, 50],
    ],
    fuseAmps: 60,
    fuseForm: "E",
    fuseOhms: 0.0009,
    feedSquareMillimetres: 10,
    motorSquareMillimetres: 6,
    // Winding: a good half minute; housing: several minutes. Full lock heats it past its limit within a few minutes.
    heat: { windingToHousing: 0.22, housingToAmbient: 0.5, windingCapacity: 150, housingCapacity: 1200 },
  },
  pinion: {
    motorPlace: "on the steering pinion",
    zone: "bulkheadLeft",
    windingOhmsAt20: 0.125,
    torquePerAmp: 0.047,
    gear: { ratio: 19, efficiency: 0.83 },
    assistCurve: [
      [0.6, 0],
      [2, 11],
      [4, 29],
      [6, 48],
      [8, 61],
      [9.5, 65],
    ],
    fuseAmps: 80,
    fuseForm: "bolted",
    fuseOhms: 0.0006,
    feedSquareMillimetres: 16,
    motorSquareMillimetres: 10,
    heat: { windingToHousing: 0.19, housingToAmbient: 0.42, windingCapacity: 200, housingCapacity: 1500 },
  },
  rack: {
    motorPlace: "beside the rack, with belt and ball nut",
    zone: "engineBayFront",
    windingOhmsAt20: 0.085,
    torquePerAmp: 0.052,
    gear: { ratio: 20, efficiency: 0.88 },
    assistCurve: [
      [0.6, 0],
      [2, 15],
      [4, 39],
      [6, 63],
      [8, 80],
      [9.5, 85],
    ],
    fuseAmps: 100,
    fuseForm: "bolted",
    fuseOhms: 0.0005,
    feedSquareMillimetres: 25,
    motorSquareMillimetres: 16,
    heat: { windingToHousing: 0.16, housingToAmbient: 0.36, windingCapacity: 260, housingCapacity: 1900 },
  },
};
