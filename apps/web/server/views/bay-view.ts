import "server-only";
import type { Database } from "@probeworthy/database";
import type { LearnerView } from "@probeworthy/evaluation";
import type { ServiceView } from "@/features/service-information/service-view";
import { type AttemptOwner, loadOwnAttempt } from "../services/attempts/attempt-record";
import { toLearnerView } from "../services/attempts/command-attempt";
import { type DrawnSystem, loadDrawings } from "./drawings";
import { serviceViewOf } from "./service-view";

export interface BayView {
  readonly view: LearnerView;
  readonly service: ServiceView;
  /** Comes later than the rest the first time after a start: laying a sheet out takes a while. */
  readonly drawings: Promise<DrawnSystem>;
}

/** Everything the bay shows of the owner's own attempt; undefined for an unknown one and for anybody else's. */
export async function loadBay(
  database: Database,
  owner: AttemptOwner,
  attemptId: string,
): Promise<BayView | undefined> {
  const record = await loadOwnAttempt(database, owner, attemptId);
  if (record === undefined) return undefined;
  const { context, vehicleVersionId } = record;
  const { document, scenario } = context;
  return {
    view: toLearnerView(record),
    service: serviceViewOf(vehicleVersionId, document, scenario.system),
    drawings: loadDrawings(vehicleVersionId, document, scenario.system),
  };
}
