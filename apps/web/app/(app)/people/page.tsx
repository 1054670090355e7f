import Link from "next/link";
import { buttonClass } from "@/components/button-class";
import { AddPersonDialog } from "@/features/people/add-person-dialog";
import { PeopleTable } from "@/features/people/people-table";
import { SheetPage } from "@/features/shell/sheet-page";
import { requireUser } from "@/server/auth/require-user";
import { database } from "@/server/database";
import { loadPeople } from "@/server/views/people-view";

export const metadata = { title: "People" };

export default async function PeoplePage() {
  const user = await requireUser(["administrator"]);
  const { people } = await loadPeople(await database(), user);
  return (
    <SheetPage
      title="People"
      lead="Who may sign in, and as what. Every change is written to the log."
      actions={
        <>
          <Link href="/people/log" className={buttonClass("quiet")}>
            Log
          </Link>
          <AddPersonDialog />
        </>
      }
      wide
      entries={[
        { label: "Name", value: user.name },
        { label: "Sheet", value: "People" },
        { label: "Accounts", value: people.length },
      ]}
    >
      <PeopleTable people={people} />
    </SheetPage>
  );
}
