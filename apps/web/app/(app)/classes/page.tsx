import { ClassList } from "@/features/classes/class-list";
import { NewClassDialog } from "@/features/classes/new-class-dialog";
import { SheetPage } from "@/features/shell/sheet-page";
import { requireUser } from "@/server/auth/require-user";
import { teachers } from "@/server/auth/staff";
import { database } from "@/server/database";
import { loadClasses } from "@/server/views/classes-view";

export const metadata = { title: "Classes" };

export default async function ClassesPage() {
  const user = await requireUser(teachers);
  const { classes } = await loadClasses(await database(), user);
  return (
    <SheetPage
      title="Classes"
      lead="Each class has its gradebook, its learners and the work handed out to it."
      actions={<NewClassDialog />}
      entries={[
        { label: "Name", value: user.name },
        { label: "Sheet", value: "Classes" },
        { label: "Classes", value: classes.length },
      ]}
    >
      <ClassList classes={classes} />
    </SheetPage>
  );
}
