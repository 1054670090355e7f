import * as trainingVehiclePackage from "@probeworthy/training-vehicle";
import { z } from "zod";

const documentSchema = z.looseObject({ id: z.string(), title: z.string() });

const contentSchema = z.object({
  trainingVehicle: documentSchema,
  starterScenarios: z.array(documentSchema.extend({ weights: z.unknown(), passMark: z.number() })),
});

/** The vehicle and the scenarios an organisation starts with, as the database stores them: plain documents. */
export type StarterContent = z.infer<typeof contentSchema>;

export const starterContent = (): StarterContent => contentSchema.parse(trainingVehiclePackage);
