import { keyWords, useCommands } from '../commands.ts';
import { Modal } from '../common/Modal.tsx';
import { useUi } from '../ui-state.ts';
import './dialogs.css';

const POINTER = [
  ['Wheel, pinch', 'Zoom at the pointer'],
  ['Space + drag, middle button, two fingers', 'Move the view'],
  ['Drag on empty floor', 'Select what the frame encloses'],
  ['Ctrl + drag on empty floor', 'Select what the frame touches'],
  ['Alt + drag on empty floor', 'Select what a loop encloses'],
  ['Alt + click', 'Select one thing out of its group'],
  ['Digits, with the wall or door tool', 'Type a length; Enter takes it'],
  ['Shift + click', 'Add to the selection, or take from it'],
  ['Alt while dragging', 'No snapping'],
  ['Drag a label', 'Put it there by hand, with a leader'],
  ['Right button, long press, menu key', 'What can be done with it'],
  ['Arrows, Enter, Space in the table', 'Move, change a cell, select'],
  ['Escape', 'End what is begun, then the tool, then the selection'],
] as const;

export const ShortcutsDialog = () => {
  const { all } = useCommands();
  const open = useUi((u) => u.open);
  return (
    <Modal title="Keys" open onClose={() => open(undefined)} wide>
      <table className="table">
        <tbody>
          {all
            .filter((c) => c.keys.length + (c.platformKeys?.length ?? 0) > 0)
            .map((c) => (
              <tr key={c.id}>
                <td>{c.label}</td>
                <td className="kbd">{[...c.keys, ...(c.platformKeys ?? [])].map(keyWords).join(', ')}</td>
              </tr>
            ))}
          <tr>
            <td>All commands</td>
            <td className="kbd">/</td>
          </tr>
          {POINTER.map(([keys, what]) => (
            <tr key={what}>
              <td>{what}</td>
              <td className="kbd">{keys}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </Modal>
  );
};
