import { vehicleJsonSchema } from "@probeworthy/vehicle/authoring";
import { attachment } from "@/server/http/attachment";
import { withRoute } from "@/server/http/with-route";

/** The JSON Schema of a vehicle document, for editors and for programs that write one. */
export const GET = withRoute({
  auth: "signed_in",
  handler: async () =>
    attachment(
      `${JSON.stringify(vehicleJsonSchema(), null, 2)}\n`,
      "probeworthy-vehicle-1.schema.json",
      "application/schema+json; charset=utf-8",
    ),
});
