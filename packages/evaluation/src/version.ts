/** Stored with every attempt: the same version gives the same log and the same grade from the same input. */
export const engineVersion = "3";
