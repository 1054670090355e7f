import "server-only";
import type { Database } from "@probeworthy/database";
import type { LearnerView } from "@probeworthy/evaluation";
import type { PaperIndex } from "@/features/papers/papers-view";
import type { ServiceView } from "@/features/service-information/service-view";
import { type AttemptOwner, loadOwnAttempt } from "../services/attempts/attempt-record";
import { toLearnerView } from "../services/attempts/command-attempt";
import { paperIndexOf } from "./paper-index";
import { serviceViewOf } from "./service-view";
import { conditionsOfSystem } from "./system-conditions";
import { symptomsOfSystem } from "./system-symptoms";

export interface BayView {
  readonly view: LearnerView;
  readonly service: ServiceView;
  /** What there is to choose from and to search in; the sheets themselves are fetched when they are looked at. */
  readonly index: PaperIndex;
  /** Conditions that act on the system of the job: they are offered first. */
  readonly ownConditions: readonly string[];
  /** Ids of what one notices of that system: shown open, the rest of the car folded away. */
  readonly ownSymptoms: readonly string[];
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
    service: serviceViewOf(vehicleVersionId, document),
    index: paperIndexOf(vehicleVersionId, document),
    ownConditions: conditionsOfSystem(document, scenario.system),
    ownSymptoms: symptomsOfSystem(document, scenario.system),
  };
}
