import { join } from "node:path";
import { fileURLToPath } from "node:url";

export const root = fileURLToPath(new URL("../../../", import.meta.url));

/** Everything the launcher may rebuild; safe to delete. */
export const cacheFolder = join(root, ".cache");

export const webFolder = join(root, "apps", "web");
