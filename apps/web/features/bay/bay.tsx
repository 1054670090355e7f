"use client";

import type { Command, LearnerView, Report } from "@probeworthy/evaluation";
import { meterFunctions } from "@probeworthy/instruments";
import { useRouter } from "next/navigation";
import { useMemo, useRef, useState } from "react";
import { Button } from "@/components/button";
import { Tabs } from "@/components/tabs";
import { FaceSwitch } from "@/features/papers/face-switch";
import { type PaperIndex, papersOf } from "@/features/papers/papers-view";
import { SheetViewer } from "@/features/papers/sheet-viewer";
import { ServiceInformation } from "@/features/service-information/service-information";
import type { ServiceView } from "@/features/service-information/service-view";
import { announce } from "./announce";
import { CarPanel } from "./car-panel";
import { ConnectionNotice } from "./connection-notice";
import { HelpDialog } from "./help-dialog";
import { JobStrip } from "./job-strip";
import type { Lead } from "./lead-controls";
import { LogTable } from "./log-table";
import { MeterPanel } from "./meter-panel";
import { createNames } from "./names";
import { NoticeLine } from "./notice-line";
import { type Asked, askConnector, askFuse, PartingDialog } from "./parting-dialog";
import { PartsPanel } from "./parts-panel";
import { PointList } from "./point-list";
import { ReportForm } from "./report-form";
import { ScanPanel } from "./scan-panel";
import { useShortcutSetting, useShortcuts } from "./shortcuts";
import { useAttempt } from "./use-attempt";
import { useOnline } from "./use-online";

/** The drawing leaves room for the slip below it on a tablet, and for itself on one screen elsewhere. */
const drawingHeight =
  "[&_[role=group][tabindex='0']]:max-h-[44dvh]! lg:[&_[role=group][tabindex='0']]:max-h-[max(24rem,calc(100dvh-16.5rem))]!";

export interface BayProps {
  readonly attemptId: string;
  readonly initialView: LearnerView;
  readonly service: ServiceView;
  readonly index: PaperIndex;
  readonly ownConditions: readonly string[];
  readonly ownSymptoms: readonly string[];
}

/** The screen where an attempt is worked: drawing, meter, car. */
export function Bay(props: BayProps) {
  const { attemptId, initialView, service, index, ownConditions, ownSymptoms } = props;
  const router = useRouter();
  const { view, pending, notice, announcement, send, retry } = useAttempt(attemptId, initialView, announce);
  const online = useOnline();
  const names = useMemo(() => createNames(view), [view]);
  const [armed, setArmed] = useState<Lead>("red");
  const [tab, setTab] = useState("diagram");
  const [help, setHelp] = useState(false);
  const [asked, setAsked] = useState<Asked>();
  const [shortcutsOn, setShortcutsOn] = useShortcutSetting();
  const searchField = useRef<HTMLInputElement>(null);
  const takeButton = useRef<HTMLButtonElement>(null);

  const give = (command: Command) => void send(command);
  const place = (lead: Lead, point: string) => {
    setArmed(lead === "red" ? "black" : "red");
    if (view.bench[lead] === point) return;
    void send({ type: "placeLead", lead, point }).then((done) => {
      // Refused: the lead is still in the hand.
      if (done === undefined) setArmed(lead);
    });
  };
  const placeArmed = (point: string) => place(armed, point);
  const submit = async (report: Report) => {
    const done = await send({ type: "submitReport", report });
    if (done !== undefined) router.push(`/jobs/${attemptId}/result`);
    return done !== undefined;
  };

  const search = () => {
    setTab("points");
    requestAnimationFrame(() => searchField.current?.focus());
  };
  const choose = (index: number) => () => {
    const chosen = meterFunctions[index];
    if (chosen !== undefined && chosen !== view.bench.function)
      give({ type: "selectFunction", function: chosen });
  };
  useShortcuts(shortcutsOn && !help && asked === undefined, {
    r: () => setArmed("red"),
    b: () => setArmed("black"),
    m: () => takeButton.current?.click(),
    "/": search,
    "?": () => setHelp(true),
    d: () => setTab("diagram"),
    l: () => setTab("log"),
    "1": choose(0),
    "2": choose(1),
    "3": choose(2),
    "4": choose(3),
  });

  const papers = papersOf("attempts", attemptId);
  const { red, black } = view.bench;
  const touching = {
    papers,
    points: view.points,
    leads: { red: red ?? undefined, black: black ?? undefined },
    onPoint: placeArmed,
  };
  const panel = { view, names, notice, pending, send: give };
  return (
    <div className="flex-1" data-testid="bay">
      <JobStrip view={view} actions={<Button onClick={() => setHelp(true)}>Help and keys</Button>} />
      <p className="sr-only" role="status" aria-live="polite">
        <span key={announcement.count}>{announcement.text}</span>
      </p>
      <div className="grid items-start gap-x-5 gap-y-6 p-3 sm:p-4 md:grid-cols-2 lg:grid-cols-[minmax(0,1fr)_19rem] xl:grid-cols-[minmax(0,1fr)_19rem_16.5rem]">
        <div className="min-w-0 md:col-span-2 lg:col-span-1">
          <Tabs
            label="Papers of the job"
            value={tab}
            onValueChange={setTab}
            items={[
              {
                value: "diagram",
                keepMounted: true,
                label: "Diagram",
                content: (
                  <div className={drawingHeight}>
                    <SheetViewer
                      {...touching}
                      index={index}
                      initialSystem={view.job.system}
                      unplugged={view.bench.unplugged}
                      pulledFuses={view.bench.pulledFuses}
                      onConnector={(id) => setAsked(askConnector(id, view.bench, service))}
                      onFuse={(id) => setAsked(askFuse(id, view.bench, service))}
                      hint={`The ${armed} lead is in hand`}
                    />
                    <NoticeLine notice={notice} about={["unplug", "plug", "pullFuse", "fitFuse"]} />
                  </div>
                ),
              },
              {
                value: "parts",
                keepMounted: true,
                label: "Connectors, fuses",
                content: (
                  <PartsPanel
                    view={view}
                    service={service}
                    notice={notice}
                    send={give}
                    ask={setAsked}
                    renderFace={(connector) => (
                      <FaceSwitch
                        key={connector}
                        {...touching}
                        connector={connector}
                        isApart={view.bench.unplugged.includes(connector)}
                      />
                    )}
                  />
                ),
              },
              {
                value: "points",
                keepMounted: true,
                label: "Points",
                content: <PointList view={view} armed={armed} searchField={searchField} onPlace={place} />,
              },
              { value: "scan", label: "Scan tool", content: <ScanPanel {...panel} /> },
              {
                value: "service",
                label: "Manual",
                content: (
                  <ServiceInformation service={service} papers={papers} initialSystem={view.job.system} />
                ),
              },
              {
                value: "log",
                label: `Log (${view.log.length})`,
                content: <LogTable log={view.log} names={names} newestFirst />,
              },
              {
                value: "report",
                label: "Report",
                content: (
                  <ReportForm
                    attemptId={attemptId}
                    view={view}
                    notice={notice}
                    pending={pending}
                    onSubmit={submit}
                  />
                ),
              },
            ]}
          />
        </div>
        <div className="min-w-0 lg:sticky lg:top-24 lg:max-h-[calc(100dvh-6.5rem)] lg:overflow-y-auto lg:p-1">
          <MeterPanel {...panel} armed={armed} onArm={setArmed} takeButton={takeButton} />
        </div>
        <div className="min-w-0 lg:col-span-2 xl:col-span-1">
          <CarPanel {...panel} ownConditions={ownConditions} ownSymptoms={ownSymptoms} />
        </div>
      </div>
      <ConnectionNotice online={online} notice={notice} onRetry={retry} />
      <PartingDialog asked={asked} onClose={() => setAsked(undefined)} onConfirm={give} />
      <HelpDialog
        open={help}
        onOpenChange={setHelp}
        shortcutsOn={shortcutsOn}
        onShortcutsOn={setShortcutsOn}
      />
    </div>
  );
}
