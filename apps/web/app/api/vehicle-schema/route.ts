import { vehicleDocumentSchema } from "@probeworthy/vehicle";
import { z } from "zod";
import { attachment } from "@/server/http/attachment";
import { withRoute } from "@/server/http/with-route";

/** The JSON Schema of a vehicle document, for editors and for programs that write one. */
export const GET = withRoute({
  auth: "signed_in",
  handler: async () => {
    const schema = z.toJSONSchema(vehicleDocumentSchema, { io: "input", unrepresentable: "any" });
    return attachment(
      `${JSON.stringify(schema, null, 2)}\n`,
      "probeworthy-vehicle-1.schema.json",
      "application/schema+json; charset=utf-8",
    );
  },
});
