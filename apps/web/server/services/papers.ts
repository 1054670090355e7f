import "server-only";
import type { Database } from "@probeworthy/database";
import { z } from "zod";
import { type PaperHolder, paperHolders } from "@/features/papers/papers-view";
import type { SessionUser } from "../auth/session-user";
import { staff } from "../auth/staff";
import { idSchema } from "../http/ids";
import type { SheetSource } from "../views/drawings";
import { findReviewableAttempt } from "./access";
import { type AttemptRecord, loadOwnAttempt, loadRecord } from "./attempts/attempt-record";
import { loadLatestVehicle } from "./scenarios/find-scenario";

export const paperParams = z.object({ holder: z.enum(paperHolders), id: idSchema });
export const sheetParams = paperParams.extend({ system: idSchema });

/** The vehicle whose papers are read. `record` holds secrets: only the potentials look into it, behind their gate. */
export interface Papers extends SheetSource {
  readonly record?: AttemptRecord;
}

const isStaff = ({ role }: SessionUser): boolean => staff.some((one) => one === role);

/**
 * Papers this person may read: a vehicle's for staff, an attempt's for its owner and for who may review it. Everything
 * else answers like an unknown id.
 */
export async function findPapers(
  database: Database,
  user: SessionUser,
  { holder, id }: { readonly holder: PaperHolder; readonly id: string },
): Promise<Papers | undefined> {
  const { organisationId } = user;
  if (holder === "vehicles") {
    const vehicle = isStaff(user) ? await loadLatestVehicle(database, organisationId, id) : undefined;
    return vehicle && { database, organisationId, ...vehicle };
  }
  const record = await findRecord(database, user, id);
  if (record === undefined) return undefined;
  const { vehicleVersionId: versionId, context } = record;
  return { database, organisationId, versionId, document: context.document, record };
}

async function findRecord(
  database: Database,
  user: SessionUser,
  attemptId: string,
): Promise<AttemptRecord | undefined> {
  if (!isStaff(user)) return loadOwnAttempt(database, user, attemptId);
  const attempt = await findReviewableAttempt(database, user, attemptId);
  return attempt && loadRecord(database, user.organisationId, attempt);
}

/** As {@link findPapers}, for a paper of one system; undefined too when the vehicle has no such system. */
export async function findSystemPapers(
  database: Database,
  user: SessionUser,
  params: z.infer<typeof sheetParams>,
): Promise<Papers | undefined> {
  const papers = await findPapers(database, user, params);
  return papers?.document.systems.some(({ id }) => id === params.system) === true ? papers : undefined;
}
