"use client";

import Link from "next/link";
import { type ReactNode, useCallback, useEffect, useState } from "react";
import { Button } from "@/components/button";
import { Tabs } from "@/components/tabs";
import type { AuthoringView } from "./authoring-view";
import { DraftProvider, useDraftHistory } from "./draft/draft-context";
import { jumpTo } from "./draft/jump";
import { MessagesProvider } from "./draft/messages";
import { formatPath, type Path, parsePath } from "./draft/path";
import { SaveStatus } from "./draft/save-status";
import { useAutosave } from "./draft/use-autosave";
import { useUndoKeys } from "./draft/use-undo-keys";
import { recordsOf } from "./fields/new-record";
import { type SectionName, sectionNames } from "./fields/section-specs";
import { ChartPanel } from "./panel/chart-panel";
import { DiagramPanel } from "./panel/diagram-panel";
import { MessagePanel } from "./panel/message-panel";
import { PublishDialog } from "./panel/publish-dialog";
import { Offers } from "./sections/offers";
import { type OpenRows, SectionTable } from "./sections/section-table";
import { SectionTabs } from "./sections/section-tabs";
import { VehicleSection } from "./sections/vehicle-section";

const tabOf: Readonly<Record<SectionName, string>> = {
  components: "components",
  connectors: "connectors",
  conductors: "conductors",
  splices: "joints",
  groundPoints: "joints",
  conditions: "conditions",
  systems: "systems",
  symptoms: "symptoms",
};

const isSection = (name: unknown): name is SectionName => sectionNames.some((section) => section === name);

/** Where a vehicle is made: its lists at the left, what becomes of them at the right. */
export function WorkspaceScreen({ view }: { readonly view: AuthoringView }) {
  const { history, actions } = useDraftHistory(view.document);
  const draft = history.present.value;
  const saving = useAutosave(view, draft);
  useUndoKeys(actions);
  const [tab, setTab] = useState("components");
  const [panel, setPanel] = useState("drawing");
  const [open, setOpen] = useState<OpenRows["open"]>({});
  const [chosenSystem, setSystem] = useState<string>();
  const onOpen = useCallback<OpenRows["onOpen"]>(
    (section, index) => setOpen((before) => ({ ...before, [section]: index })),
    [],
  );
  const [jumped, setJumped] = useState<{ readonly path: Path }>();
  const jump = useCallback(
    (text: string) => {
      const path = parsePath(text);
      const [section, index] = path;
      setTab(isSection(section) ? tabOf[section] : "vehicle");
      if (isSection(section) && typeof index === "number") onOpen(section, index);
      setJumped({ path });
    },
    [onOpen],
  );
  useEffect(() => (jumped === undefined ? undefined : jumpTo(jumped.path)), [jumped]);
  const systems = recordsOf(draft, "systems").map(({ id }) => String(id));
  const systemId = chosenSystem !== undefined && systems.includes(chosenSystem) ? chosenSystem : systems[0];
  const choose = (designator: string) => {
    for (const section of ["components", "splices", "groundPoints"] as const) {
      const index = recordsOf(draft, section).findIndex(({ id }) => id === designator);
      if (index >= 0) return jump(formatPath([section, index]));
    }
  };
  const errors = saving.messages.filter(({ severity }) => severity === "error").length;
  const undoLabel = history.present.label;
  const redoLabel = history.future[0]?.label ?? "";
  const rows = { open, onOpen };
  const table = (section: SectionName, lead?: ReactNode) => (
    <div data-path={section} className="space-y-3">
      {lead !== undefined && <p className="max-w-prose text-sm text-ink-soft">{lead}</p>}
      <SectionTable section={section} {...rows} />
    </div>
  );
  return (
    <DraftProvider draft={draft} actions={actions}>
      <MessagesProvider messages={saving.messages}>
        <Offers />
        <div className="sticky top-0 z-20 -mx-4 mb-4 flex flex-wrap items-center gap-x-4 gap-y-2 border-b border-ink bg-paper px-4 py-2 sm:-mx-8 sm:px-8">
          <Button
            onClick={actions.undo}
            disabled={history.past.length === 0}
            title={undoLabel === "" ? "Ctrl + Z" : `${undoLabel} (Ctrl + Z)`}
          >
            Undo
          </Button>
          <Button
            onClick={actions.redo}
            disabled={history.future.length === 0}
            title={redoLabel === "" ? "Ctrl + Shift + Z" : `${redoLabel} (Ctrl + Shift + Z)`}
          >
            Redo
          </Button>
          <div className="min-w-48 flex-1">
            <SaveStatus saving={saving} />
          </div>
          <a href="#beside" className="link inline-flex min-h-11 items-center xl:hidden">
            Drawing and messages
          </a>
          <Link href="/vehicles/guide" target="_blank" className="link inline-flex min-h-11 items-center">
            Guide
          </Link>
          <PublishDialog
            vehicleId={view.vehicleId}
            publishedNumber={view.publishedNumber}
            saving={saving}
            onMessages={() => setPanel("messages")}
          />
        </div>
        <SectionTabs
          label="Parts of the vehicle"
          value={tab}
          onValueChange={setTab}
          items={[
            { value: "vehicle", label: "Vehicle", content: <VehicleSection /> },
            { value: "components", label: "Components", content: table("components") },
            {
              value: "fuses",
              label: "Fuses",
              content: <SectionTable section="components" fusesOnly {...rows} />,
            },
            { value: "connectors", label: "Connectors", content: table("connectors") },
            {
              value: "conductors",
              label: "Conductors",
              content: table(
                "conductors",
                "Enter goes down a row and adds one at the end, Alt and arrows go to any cell. Rows copied from a spreadsheet are pasted into the first cell they belong in.",
              ),
            },
            {
              value: "joints",
              label: "Splices and grounds",
              content: (
                <div className="space-y-8">
                  <section aria-labelledby="joints-grounds" className="space-y-2">
                    <h2 id="joints-grounds">Ground points</h2>
                    {table("groundPoints")}
                  </section>
                  <section aria-labelledby="joints-splices" className="space-y-2">
                    <h2 id="joints-splices">Splices</h2>
                    {table("splices")}
                  </section>
                </div>
              ),
            },
            { value: "conditions", label: "Conditions", content: table("conditions") },
            { value: "systems", label: "Systems", content: table("systems") },
            { value: "symptoms", label: "Symptoms", content: table("symptoms") },
          ]}
          beside={
            <aside
              id="beside"
              aria-label="What becomes of it"
              className="min-w-0 scroll-mt-20 xl:sticky xl:top-20"
            >
              <Tabs
                label="What becomes of it"
                value={panel}
                onValueChange={setPanel}
                items={[
                  {
                    value: "drawing",
                    label: "Drawing",
                    content: (
                      <DiagramPanel
                        vehicleId={view.vehicleId}
                        systemId={systemId}
                        onSystem={setSystem}
                        onChoose={choose}
                      />
                    ),
                  },
                  {
                    value: "messages",
                    label: errors === 0 ? "Messages" : `Messages (${errors})`,
                    content: (
                      <div className="max-h-[70vh] overflow-y-auto">
                        <MessagePanel messages={saving.messages} onJump={jump} />
                      </div>
                    ),
                  },
                  {
                    value: "chart",
                    label: "Chart",
                    content: (
                      <div className="max-h-[70vh] overflow-y-auto">
                        <ChartPanel vehicleId={view.vehicleId} systemId={systemId} />
                      </div>
                    ),
                  },
                ]}
              />
            </aside>
          }
        />
      </MessagesProvider>
    </DraftProvider>
  );
}
