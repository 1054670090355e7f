-- What the schema language cannot say: rows that never change, and checks on values.
-- Written by hand; `draft-migration` does not see triggers, functions or check constraints and leaves them alone.

-- Values ------------------------------------------------------------------------------------------------

ALTER TABLE "User" ADD CONSTRAINT "User_email_lower_case" CHECK ("email" = lower("email"));
ALTER TABLE "Invitation" ADD CONSTRAINT "Invitation_email_lower_case" CHECK ("email" = lower("email"));
ALTER TABLE "Assignment"
  ADD CONSTRAINT "Assignment_for_class_or_candidate" CHECK (num_nonnulls("classId", "candidateId") <= 1),
  ADD CONSTRAINT "Assignment_window_in_order" CHECK ("opensAt" IS NULL OR "closesAt" IS NULL OR "opensAt" < "closesAt"),
  ADD CONSTRAINT "Assignment_attempt_limit_positive" CHECK ("attemptLimit" IS NULL OR "attemptLimit" > 0),
  ADD CONSTRAINT "Assignment_pass_mark_is_a_percentage" CHECK ("passMark" BETWEEN 0 AND 100);
ALTER TABLE "AttemptEvent" ADD CONSTRAINT "AttemptEvent_sequence_positive" CHECK ("sequence" > 0);
ALTER TABLE "GradeOverride" ADD CONSTRAINT "GradeOverride_has_a_reason" CHECK (btrim("reason") <> '');

-- Rows that never change ----------------------------------------------------------------------------------

-- Erasing an organisation (data protection) is the one exception, and it goes through erase_organisation().
CREATE FUNCTION refuse_change() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  IF TG_OP = 'DELETE' AND current_setting('probeworthy.erasing_organisation', true) = 'yes' THEN
    RETURN OLD;
  END IF;
  RAISE EXCEPTION '% rows are never changed or removed', TG_TABLE_NAME USING ERRCODE = 'restrict_violation';
END;
$$;

CREATE TRIGGER "AttemptEvent_is_append_only" BEFORE UPDATE OR DELETE ON "AttemptEvent"
  FOR EACH ROW EXECUTE FUNCTION refuse_change();
CREATE TRIGGER "Grade_is_append_only" BEFORE UPDATE OR DELETE ON "Grade"
  FOR EACH ROW EXECUTE FUNCTION refuse_change();
CREATE TRIGGER "GradeOverride_is_append_only" BEFORE UPDATE OR DELETE ON "GradeOverride"
  FOR EACH ROW EXECUTE FUNCTION refuse_change();
CREATE TRIGGER "AuditEntry_is_append_only" BEFORE UPDATE OR DELETE ON "AuditEntry"
  FOR EACH ROW EXECUTE FUNCTION refuse_change();
CREATE TRIGGER "VehicleVersion_is_immutable" BEFORE UPDATE OR DELETE ON "VehicleVersion"
  FOR EACH ROW EXECUTE FUNCTION refuse_change();
CREATE TRIGGER "ScenarioVersion_is_immutable" BEFORE UPDATE OR DELETE ON "ScenarioVersion"
  FOR EACH ROW EXECUTE FUNCTION refuse_change();

-- TRUNCATE fires no row trigger.
CREATE TRIGGER "AttemptEvent_no_truncate" BEFORE TRUNCATE ON "AttemptEvent"
  FOR EACH STATEMENT EXECUTE FUNCTION refuse_change();
CREATE TRIGGER "Grade_no_truncate" BEFORE TRUNCATE ON "Grade"
  FOR EACH STATEMENT EXECUTE FUNCTION refuse_change();
CREATE TRIGGER "GradeOverride_no_truncate" BEFORE TRUNCATE ON "GradeOverride"
  FOR EACH STATEMENT EXECUTE FUNCTION refuse_change();
CREATE TRIGGER "AuditEntry_no_truncate" BEFORE TRUNCATE ON "AuditEntry"
  FOR EACH STATEMENT EXECUTE FUNCTION refuse_change();
CREATE TRIGGER "VehicleVersion_no_truncate" BEFORE TRUNCATE ON "VehicleVersion"
  FOR EACH STATEMENT EXECUTE FUNCTION refuse_change();
CREATE TRIGGER "ScenarioVersion_no_truncate" BEFORE TRUNCATE ON "ScenarioVersion"
  FOR EACH STATEMENT EXECUTE FUNCTION refuse_change();

-- What an attempt is about is settled when it starts: a grade is reproduced from these columns.
CREATE FUNCTION refuse_other_variant() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  IF (NEW."assignmentId", NEW."learnerId", NEW."number", NEW."variantSeed", NEW."variant", NEW."vehicleVersionId",
      NEW."scenarioVersionId", NEW."engineVersion")
     IS DISTINCT FROM
     (OLD."assignmentId", OLD."learnerId", OLD."number", OLD."variantSeed", OLD."variant", OLD."vehicleVersionId",
      OLD."scenarioVersionId", OLD."engineVersion") THEN
    RAISE EXCEPTION 'the variant of an attempt never changes' USING ERRCODE = 'restrict_violation';
  END IF;
  RETURN NEW;
END;
$$;

CREATE TRIGGER "Attempt_keeps_its_variant" BEFORE UPDATE ON "Attempt"
  FOR EACH ROW EXECUTE FUNCTION refuse_other_variant();

-- Erasing an organisation -----------------------------------------------------------------------------------

-- Removes everything an organisation owns, and the people who belong to no other organisation. For the operator,
-- by hand: SELECT erase_organisation('<organisation id>');
CREATE FUNCTION erase_organisation(organisation text) RETURNS void LANGUAGE plpgsql AS $$
DECLARE
  people text[];
BEGIN
  SELECT array_agg(m."userId") INTO people FROM "Membership" m
    WHERE m."organisationId" = organisation
      AND NOT EXISTS (SELECT 1 FROM "Membership" o
                      WHERE o."userId" = m."userId" AND o."organisationId" <> organisation);
  PERFORM set_config('probeworthy.erasing_organisation', 'yes', true);
  DELETE FROM "GradeOverride" WHERE "attemptId" IN (SELECT "id" FROM "Attempt" WHERE "organisationId" = organisation);
  DELETE FROM "Grade" WHERE "attemptId" IN (SELECT "id" FROM "Attempt" WHERE "organisationId" = organisation);
  DELETE FROM "AttemptEvent" WHERE "attemptId" IN (SELECT "id" FROM "Attempt" WHERE "organisationId" = organisation);
  DELETE FROM "Attempt" WHERE "organisationId" = organisation;
  DELETE FROM "Invitation" WHERE "organisationId" = organisation;
  DELETE FROM "Assignment" WHERE "organisationId" = organisation;
  DELETE FROM "ScenarioVersion" WHERE "scenarioId" IN (SELECT "id" FROM "Scenario" WHERE "organisationId" = organisation);
  DELETE FROM "Scenario" WHERE "organisationId" = organisation;
  DELETE FROM "TerminalChart" WHERE "organisationId" = organisation;
  DELETE FROM "VehicleVersion" WHERE "vehicleId" IN (SELECT "id" FROM "Vehicle" WHERE "organisationId" = organisation);
  DELETE FROM "Vehicle" WHERE "organisationId" = organisation;
  DELETE FROM "Class" WHERE "organisationId" = organisation;
  DELETE FROM "AuditEntry" WHERE "organisationId" = organisation;
  DELETE FROM "Membership" WHERE "organisationId" = organisation;
  DELETE FROM "User" WHERE "id" = ANY (people);
  DELETE FROM "Organisation" WHERE "id" = organisation;
  PERFORM set_config('probeworthy.erasing_organisation', 'no', true);
END;
$$;
