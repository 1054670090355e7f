import "server-only";
import { z } from "zod";

/** An id as it may stand in an address or a body; whether it exists is for the resource to say. */
export const idSchema = z.string().min(1).max(64);

export const idParams = z.object({ id: idSchema });
