import type { Command, LearnerView } from "@probeworthy/evaluation";
import { Button } from "@/components/button";
import { Caution } from "@/components/caution";
import { Dialog, DialogClose } from "@/components/dialog";
import type { ServiceView } from "@/features/service-information/service-view";

/** A step at the car that is asked about before it is taken. */
export interface Asked {
  readonly command: Command;
  readonly title: string;
  readonly confirm: string;
  readonly cautions: readonly string[];
}

/** What a press on a connector means now: apart when it is together, together when it is apart. */
export function askConnector(id: string, bench: LearnerView["bench"], service: ServiceView): Asked {
  if (bench.unplugged.includes(id)) {
    return {
      command: { type: "plug", connector: id },
      title: `Plug ${id} back?`,
      confirm: `Plug ${id} back`,
      cautions: [],
    };
  }
  return {
    command: { type: "unplug", connector: id },
    title: `Unplug ${id}?`,
    confirm: `Unplug ${id}`,
    cautions: service.connectors.find((connector) => connector.id === id)?.cautions ?? [],
  };
}

export function askFuse(id: string, bench: LearnerView["bench"], service: ServiceView): Asked {
  if (bench.pulledFuses.includes(id)) {
    return {
      command: { type: "fitFuse", fuse: id, fresh: false },
      title: `Put ${id} back?`,
      confirm: `Put ${id} back`,
      cautions: [],
    };
  }
  return {
    command: { type: "pullFuse", fuse: id },
    title: `Pull ${id}?`,
    confirm: `Pull ${id}`,
    cautions: service.fuses.find((fuse) => fuse.id === id)?.cautions ?? [],
  };
}

export interface PartingDialogProps {
  readonly asked: Asked | undefined;
  readonly onClose: () => void;
  readonly onConfirm: (command: Command) => void;
}

/** Asks before something is taken apart, with what would have to be done first at a real car. */
export function PartingDialog({ asked, onClose, onConfirm }: PartingDialogProps) {
  return (
    <Dialog
      title={asked?.title ?? ""}
      open={asked !== undefined}
      onOpenChange={(open) => !open && onClose()}
      actions={
        <>
          <DialogClose>
            <Button>Leave it</Button>
          </DialogClose>
          <Button
            kind="primary"
            onClick={() => {
              if (asked !== undefined) onConfirm(asked.command);
              onClose();
            }}
          >
            {asked?.confirm}
          </Button>
        </>
      }
    >
      {asked === undefined || asked.cautions.length === 0 ? (
        <p>This is an action and takes about a minute of shop time.</p>
      ) : (
        <Caution title="At a real car, first">
          {asked.cautions.map((text) => (
            <p key={text}>{text}</p>
          ))}
        </Caution>
      )}
    </Dialog>
  );
}
