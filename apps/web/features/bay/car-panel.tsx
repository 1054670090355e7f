import type { Command, LearnerView } from "@probeworthy/evaluation";
import { ApartList } from "./apart-list";
import { ConditionPanel } from "./condition-panel";
import type { Names } from "./names";
import { NoticeLine } from "./notice-line";
import { NoticedList } from "./noticed-list";
import { PanelHeading } from "./panel-heading";
import { StandingTime } from "./standing-time";
import type { Notice } from "./use-attempt";

export interface CarPanelProps {
  readonly view: LearnerView;
  readonly names: Names;
  readonly notice: Notice | undefined;
  readonly send: (command: Command) => void;
  /** Names of the conditions that act on the system of the job. */
  readonly ownConditions: readonly string[];
  /** Ids of what one notices of that system. */
  readonly ownSymptoms: readonly string[];
}

/** The car: how it is being operated, what one notices, what has been taken apart. */
export function CarPanel({ view, names, notice, send, ownConditions, ownSymptoms }: CarPanelProps) {
  const setValue = (name: string, value: string | number) =>
    send({ type: "setConditions", values: { [name]: value } });
  return (
    <div className="space-y-5">
      <section aria-labelledby="car-operation">
        <PanelHeading id="car-operation">Operating conditions</PanelHeading>
        <ConditionPanel conditions={view.conditions} own={ownConditions} onSet={setValue} />
        <NoticeLine notice={notice} about={["setConditions"]} />
      </section>
      <section aria-labelledby="car-noticed">
        <PanelHeading id="car-noticed">What you notice</PanelHeading>
        <NoticedList noticed={view.noticed} own={ownSymptoms} />
      </section>
      <ApartList view={view} names={names} notice={notice} send={send} />
      <StandingTime notice={notice} send={send} />
    </div>
  );
}
