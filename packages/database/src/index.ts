export type { ConnectionOptions, DatabaseKind } from "./connection";
export {
  AssignmentMode,
  AttemptStatus,
  EnrolmentRole,
  GradeStatus,
  RevealPolicy,
  Role,
} from "./generated/enums";
export { type Database, openDatabase } from "./open-database";
export { hashPassword, verifyPassword } from "./password";
export { DataFolderInUseError } from "./process-guard";
export type { AppendEvent, AppendProblem } from "./repositories/append-event";
export type {
  Assignment,
  AssignmentForLearner,
  AssignmentForStaff,
  AssignmentTerms,
} from "./repositories/assignments";
export type {
  Attempt,
  AttemptEvent,
  AttemptEventWithWorld,
  AttemptSecrets,
  AttemptVersions,
} from "./repositories/attempts";
export type { AuditEntry } from "./repositories/audit";
export type { Chart, ChartSummary } from "./repositories/charts";
export type { ReportOfClass } from "./repositories/class-reports";
export type { ClassSummary, RosterEntry } from "./repositories/classes";
export type { ConsumeProblem } from "./repositories/consume-invitation";
export type { EffectiveGrade } from "./repositories/effective-grade";
export type {
  Gradebook,
  GradebookAttempt,
  GradeDecision,
  GradeHistory,
  GradeRevision,
} from "./repositories/grades";
export type { Invitation, InvitationForHolder, InvitationState } from "./repositories/invitations";
export type { MembershipProblem } from "./repositories/memberships";
export type { Organisation } from "./repositories/organisations";
export type { ScenarioForAuthor, ScenarioSummary, ScenarioVersion } from "./repositories/scenarios";
export type { StartAttempt, StartProblem } from "./repositories/start-attempt";
export type { Account, AccountForSignIn, MembershipOfUser, Person } from "./repositories/users";
export type { SheetRef } from "./repositories/vehicle-sheets";
export type {
  VehicleForAuthor,
  VehicleSummary,
  VehicleVersion,
  VehicleVersionEntry,
} from "./repositories/vehicles";
export type { Result } from "./result";
