import { Dialog } from "@/components/dialog";
import { Checkbox } from "@/components/inputs";
import { shortcuts } from "./shortcuts";

export interface HelpDialogProps {
  readonly open: boolean;
  readonly onOpenChange: (open: boolean) => void;
  readonly shortcutsOn: boolean;
  readonly onShortcutsOn: (on: boolean) => void;
}

export function HelpDialog({ open, onOpenChange, shortcutsOn, onShortcutsOn }: HelpDialogProps) {
  return (
    <Dialog
      title="How to work here"
      description="Everything can be done with the mouse, by touch or from the keyboard."
      open={open}
      onOpenChange={onOpenChange}
    >
      <ol className="list-decimal space-y-1 pl-5">
        <li>Set the car as the complaint needs it: key, engine, effort.</li>
        <li>Choose a lead, then a point on the drawing, on a connector face or in the list of points.</li>
        <li>Write what you expect, then take the reading. Every reading stays in the log.</li>
        <li>Narrow it down until one cause is left, then hand in concern, cause and correction.</li>
      </ol>
      <h3 className="mt-5 mb-1">Keys</h3>
      <dl className="grid grid-cols-[5rem_1fr] gap-y-1">
        {shortcuts.map((shortcut) => (
          <div key={shortcut.key} className="contents">
            <dt>
              <kbd className="border border-edge px-1.5">{shortcut.key}</kbd>
            </dt>
            <dd>{shortcut.does}</dd>
          </div>
        ))}
      </dl>
      <Checkbox
        label="Single keys act"
        hint="Switch this off if you dictate or if keys get pressed by accident."
        checked={shortcutsOn}
        onChange={(event) => onShortcutsOn(event.target.checked)}
      />
    </Dialog>
  );
}
