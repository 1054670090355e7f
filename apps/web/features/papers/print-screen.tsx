import type { Sheet } from "@probeworthy/diagram";
import { Button } from "@/components/button";
import { buttonClass } from "@/components/button-class";
import { SheetArt } from "@/features/diagram/sheet-art";
import diagram from "@/features/diagram/wiring-diagram.module.css";
import { PrintButton } from "@/features/result/print-button";
import styles from "./print-screen.module.css";

export interface PrintScreenProps {
  /** Address of this page, for another choice. */
  readonly address: string;
  readonly papers: string;
  readonly vehicleTitle: string;
  readonly systems: readonly { readonly id: string; readonly title: string }[];
  readonly sheets: readonly { readonly id: string; readonly sheet: Sheet }[];
  /** `all`, or the one system that is printed. */
  readonly chosen: string;
  readonly size: "A3" | "A4";
  /** One for all pages: browsers do not agree about pages of mixed orientation. */
  readonly orientation: "landscape" | "portrait";
}

/** Sheets ready for paper, as the browser prints them; the choice above them is not printed. */
export function PrintScreen(props: PrintScreenProps) {
  const { address, papers, vehicleTitle, systems, sheets, chosen, size, orientation } = props;
  const control = "min-h-11 rounded-sheet border border-edge bg-paper px-3 hover:border-ink";
  return (
    <div>
      <style>{`@page { size: ${size} ${orientation}; margin: 8mm; }`}</style>
      <form action={address} className="no-print mb-6 flex flex-wrap items-end gap-3">
        <label>
          <span className="label-small block">Sheets</span>
          <select name="sheet" defaultValue={chosen} className={control}>
            <option value="all">All of them</option>
            {systems.map(({ id, title }) => (
              <option key={id} value={id}>
                {title}
              </option>
            ))}
          </select>
        </label>
        <label>
          <span className="label-small block">Paper</span>
          <select name="size" defaultValue={size} className={control}>
            <option>A4</option>
            <option>A3</option>
          </select>
        </label>
        <Button type="submit">Show these</Button>
        <PrintButton />
      </form>
      {sheets.map(({ id, sheet }, index) => (
        <figure key={id} className={styles.page} aria-label={`Sheet ${sheet.title}`}>
          <svg
            viewBox={`0 0 ${sheet.width} ${sheet.height}`}
            role="img"
            aria-label={`Wiring diagram: ${sheet.title}`}
            className={`${diagram.sheet} ${diagram.onPaper} ${styles.drawing}`}
          >
            <SheetArt sheet={sheet} />
          </svg>
          <figcaption className={styles.titleBlock}>
            <Entry label="Vehicle">{vehicleTitle}</Entry>
            <Entry label="System">{sheet.title}</Entry>
            <Entry label="Sheet">
              {index + 1} of {sheets.length}
            </Entry>
            <Entry label="State">Car in order</Entry>
          </figcaption>
          <p className="no-print mt-2 flex flex-wrap gap-3">
            <a
              href={`${papers}/pdf/${encodeURIComponent(id)}?size=${size}`}
              download
              className={buttonClass("quiet")}
            >
              Save {sheet.title} as PDF, {size}
            </a>
            <a
              href={`${papers}/drawings/${encodeURIComponent(id)}`}
              download
              className={buttonClass("quiet")}
            >
              Save {sheet.title} as SVG
            </a>
          </p>
        </figure>
      ))}
    </div>
  );
}

function Entry({ label, children }: { readonly label: string; readonly children: React.ReactNode }) {
  return (
    <span className={styles.entry}>
      <span className="label-small block">{label}</span>
      <span>{children}</span>
    </span>
  );
}
