import { z } from "zod";
import { teachers } from "@/server/auth/staff";
import { attachment } from "@/server/http/attachment";
import { idParams } from "@/server/http/ids";
import { problem } from "@/server/http/problem";
import { withRoute } from "@/server/http/with-route";
import { draftOf, findOwnVehicle } from "@/server/services/vehicles/find-vehicle";

/** The whole document as JSON: a version, or the draft as it stands. */
export const GET = withRoute({
  auth: teachers,
  params: idParams,
  query: z.object({ version: z.coerce.number().int().positive().optional() }),
  resource: async ({ user, database, params }) => findOwnVehicle(database, user.organisationId, params.id),
  handler: async ({ user, database, resource, query }) => {
    const { organisationId } = user;
    if (query.version === undefined)
      return file(await draftOf(database, organisationId, resource), `${resource.name} draft`);
    const versions = await database.vehicles.versions({ organisationId, vehicleId: resource.id });
    const found = versions.find(({ number }) => number === query.version);
    const version =
      found === undefined ? null : await database.vehicles.version({ organisationId, versionId: found.id });
    if (version === null) throw problem("not_found");
    return file(version.document, `${resource.name} version ${query.version}`);
  },
});

const file = (document: unknown, name: string): Response =>
  attachment(`${JSON.stringify(document, null, 2)}\n`, `${name}.json`, "application/json; charset=utf-8");
