import type { Client } from "../client";
import { toJson } from "../json";

export interface SheetRef {
  organisationId: string;
  vehicleVersionId: string;
  system: string;
  /** Version of the layout that made it: a drawing of another one is not found. */
  layoutVersion: number;
}

/** Drawings kept beside the version they show, so that a restart need not lay them out again. Any row may be deleted. */
export function createSheetStore(client: Client) {
  return {
    /** The drawing as it was saved; undefined when there is none. */
    async findSheet({ organisationId, ...key }: SheetRef): Promise<unknown> {
      const row = await client.vehicleSheet.findFirst({
        where: { ...key, vehicleVersion: { vehicle: { organisationId } } },
        select: { drawing: true },
      });
      return row?.drawing;
    },

    /**
     * Keeps a drawing; of two made at once the later stands. Drawings of older layouts of the same system go. Answers whether
     * there is such a version in the organisation.
     */
    async saveSheet({ organisationId, ...key }: SheetRef, drawing: unknown): Promise<boolean> {
      const { vehicleVersionId, system, layoutVersion } = key;
      const known = await client.vehicleVersion.count({
        where: { id: vehicleVersionId, vehicle: { organisationId } },
      });
      if (known === 0) return false;
      await client.vehicleSheet.upsert({
        where: { vehicleVersionId_system_layoutVersion: key },
        create: { ...key, drawing: toJson(drawing) },
        update: { drawing: toJson(drawing) },
      });
      await client.vehicleSheet.deleteMany({
        where: { vehicleVersionId, system, layoutVersion: { lt: layoutVersion } },
      });
      return true;
    },
  };
}
