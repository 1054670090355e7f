import Link from "next/link";
import { notFound } from "next/navigation";
import { z } from "zod";
import { papersOf } from "@/features/papers/papers-view";
import { PrintScreen } from "@/features/papers/print-screen";
import { SheetPage } from "@/features/shell/sheet-page";
import { requireUser } from "@/server/auth/require-user";
import { database } from "@/server/database";
import { findPapers, paperParams } from "@/server/services/papers";
import { loadSheet } from "@/server/views/drawings";

export const metadata = { title: "Print the wiring diagrams" };

const querySchema = z.object({
  sheet: z.string().max(64).catch("all"),
  size: z.enum(["A3", "A4"]).catch("A4"),
});

export default async function PrintPage({
  params,
  searchParams,
}: {
  readonly params: Promise<{ holder: string; id: string }>;
  readonly searchParams: Promise<Record<string, string | string[] | undefined>>;
}) {
  const user = await requireUser();
  const whose = paperParams.safeParse(await params);
  if (!whose.success) notFound();
  const papers = await findPapers(await database(), user, whose.data);
  if (papers === undefined) notFound();
  const { document } = papers;
  const { sheet, size } = querySchema.parse(await searchParams);
  const systems = document.systems.map(({ id, title }) => ({ id, title }));
  const chosen = systems.some(({ id }) => id === sheet) ? systems.filter(({ id }) => id === sheet) : systems;
  const sheets = await Promise.all(
    chosen.map(async ({ id }) => ({ id, sheet: await loadSheet(papers, id) })),
  );
  const tall = sheets.filter(({ sheet: { width, height } }) => height > width).length;
  const orientation = tall * 2 > sheets.length ? "portrait" : "landscape";
  const { holder, id } = whose.data;
  return (
    <SheetPage
      title="Print the wiring diagrams"
      lead="One system a page. What is printed is the drawing of the car in order."
      above={
        <Link href={holder === "vehicles" ? `/vehicles/${id}` : `/jobs/${id}`} className="link">
          {holder === "vehicles" ? "Back to the vehicle" : "Back to the job"}
        </Link>
      }
      wide
      entries={[
        { label: "Vehicle", value: document.title },
        { label: "Sheets", value: sheets.length },
        { label: "Paper", value: `${size} ${orientation}` },
      ]}
    >
      <PrintScreen
        address={`/papers/${holder}/${encodeURIComponent(id)}`}
        papers={papersOf(holder, id)}
        vehicleTitle={document.title}
        systems={systems}
        sheets={sheets}
        chosen={chosen.length === systems.length ? "all" : sheet}
        size={size}
        orientation={orientation}
      />
    </SheetPage>
  );
}
