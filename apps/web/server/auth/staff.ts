import "server-only";
import type { Role } from "./session-user";

/** Who teaches classes and keeps vehicles. */
export const teachers = ["instructor", "administrator"] as const satisfies readonly Role[];

/** Who builds scenarios and reads attempts of others. */
export const staff = ["instructor", "manager", "administrator"] as const satisfies readonly Role[];

/** Who invites candidates. */
export const hirers = ["manager", "administrator"] as const satisfies readonly Role[];
