import { randomUUID } from "node:crypto";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { backends, type TestDatabase } from "../support/databases";
import { makeSchool, must, type School, someMoment } from "../support/factories";

describe.each(backends)("an organisation's own vehicles on $name", ({ open }) => {
  let test: TestDatabase;
  let school: School;
  let other: School;

  beforeAll(async () => {
    test = await open();
    school = await makeSchool(test.database);
    other = await makeSchool(test.database);
  });
  afterAll(() => test.close());

  async function makeDraft() {
    const { organisationId } = school;
    const draft = { title: "Bench", components: [] };
    const created = await test.database.vehicles.createDraft({
      organisationId,
      key: `bench-${randomUUID()}`,
      name: "Bench",
      draft,
      savedAt: someMoment,
    });
    return { organisationId, vehicleId: must(created).id };
  }

  const later = new Date(someMoment.getTime() + 1000);

  it("a draft is there for its authors and not yet for use", async () => {
    const { vehicles } = test.database;
    const ref = await makeDraft();
    const ids = (list: { id: string }[]) => list.map(({ id }) => id);
    expect(ids(await vehicles.listForAuthors(ref))).toContain(ref.vehicleId);
    expect(ids(await vehicles.list(ref))).not.toContain(ref.vehicleId);
    expect(await vehicles.find(ref)).toMatchObject({ isOwn: true, hasDraft: true, latestNumber: 0 });
    expect(await vehicles.find({ ...ref, organisationId: other.organisationId })).toBeNull();
  });

  it("of two saves over one state the second is refused", async () => {
    const { vehicles } = test.database;
    const ref = await makeDraft();
    const save = (name: string, seenAt: Date) =>
      vehicles.saveDraftOver({ ...ref, name, draft: { title: name }, seenAt, savedAt: later });
    expect(must(await save("first", someMoment))).toEqual({ savedAt: later });
    expect(await save("second", someMoment)).toEqual({
      ok: false,
      error: { code: "changed", savedAt: later },
    });
    expect(await vehicles.find(ref)).toMatchObject({ name: "first", draft: { title: "first" } });
  });

  it("a version stays as it was published, whatever the next draft says", async () => {
    const { vehicles } = test.database;
    const ref = await makeDraft();
    const document = { title: "Bench", components: [1] };
    const first = must(await vehicles.createVersion({ ...ref, document, createdById: school.instructorId }));
    await vehicles.dropDraft({ ...ref, seenAt: someMoment });
    expect(await vehicles.find(ref)).toMatchObject({ hasDraft: false, latestNumber: 1 });
    must(
      await vehicles.saveDraftOver({
        ...ref,
        name: "Bench",
        draft: { title: "Bench", components: [2] },
        seenAt: someMoment,
        savedAt: later,
      }),
    );
    const found = await vehicles.version({ organisationId: ref.organisationId, versionId: first.id });
    expect(found?.document).toEqual(document);
    expect(await vehicles.versions(ref)).toMatchObject([{ number: 1, id: first.id }]);
  });

  it("a draft saved while it was published is kept", async () => {
    const { vehicles } = test.database;
    const ref = await makeDraft();
    must(
      await vehicles.saveDraftOver({
        ...ref,
        name: "Bench",
        draft: { title: "Meanwhile" },
        seenAt: someMoment,
        savedAt: later,
      }),
    );
    await vehicles.dropDraft({ ...ref, seenAt: someMoment });
    expect(await vehicles.find(ref)).toMatchObject({ hasDraft: true, draft: { title: "Meanwhile" } });
  });

  it("an archived vehicle is in no list; a supplied one is neither saved over nor archived", async () => {
    const { vehicles } = test.database;
    const ref = await makeDraft();
    await vehicles.archive({ ...ref, archivedAt: later });
    expect((await vehicles.listForAuthors(ref)).map(({ id }) => id)).not.toContain(ref.vehicleId);
    const { organisationId } = school;
    const created = await vehicles.create({
      organisationId,
      key: `supplied-${randomUUID()}`,
      name: "Supplied",
      document: {},
      createdById: null,
    });
    const supplied = { organisationId, vehicleId: must(created).id };
    const seenAt = (await vehicles.find(supplied))?.updatedAt ?? someMoment;
    expect(
      await vehicles.saveDraftOver({ ...supplied, name: "X", draft: {}, seenAt, savedAt: later }),
    ).toEqual({ ok: false, error: { code: "not_found" } });
    await vehicles.archive({ ...supplied, archivedAt: later });
    expect((await vehicles.find(supplied))?.archivedAt).toBeNull();
  });

  it("a drawing is kept per version, system and layout, and may be deleted", async () => {
    const { vehicles } = test.database;
    const ref = await makeDraft();
    const { organisationId } = ref;
    const version = must(await vehicles.createVersion({ ...ref, document: { a: 1 }, createdById: null }));
    const sheet = { organisationId, vehicleVersionId: version.id, system: "lighting", layoutVersion: 1 };
    expect(await vehicles.findSheet(sheet)).toBeUndefined();
    expect(await vehicles.saveSheet(sheet, { width: 1 })).toBe(true);
    expect(await vehicles.saveSheet(sheet, { width: 2 })).toBe(true);
    expect(await vehicles.findSheet(sheet)).toEqual({ width: 2 });
    const foreign = { ...sheet, organisationId: other.organisationId };
    expect(await vehicles.findSheet(foreign)).toBeUndefined();
    expect(await vehicles.saveSheet(foreign, {})).toBe(false);
    expect(await vehicles.saveSheet({ ...sheet, layoutVersion: 2 }, { width: 3 })).toBe(true);
    expect(await vehicles.findSheet(sheet)).toBeUndefined();
    expect(await vehicles.findSheet({ ...sheet, layoutVersion: 2 })).toEqual({ width: 3 });
  });
});
