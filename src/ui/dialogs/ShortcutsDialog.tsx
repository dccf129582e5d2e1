import { keyWords, useCommands } from '../commands.ts';
import { Modal } from '../common/Modal.tsx';
import { useUi } from '../ui-state.ts';
import './dialogs.css';

const POINTER = [
  ['Wheel, pinch', 'Zoom at the pointer'],
  ['Space + drag, middle button, two fingers', 'Move the view'],
  ['Drag on empty floor', 'Select what the frame encloses'],
  ['Shift + click', 'Add to the selection, or take from it'],
  ['Alt while dragging', 'No snapping'],
] as const;

export const ShortcutsDialog = () => {
  const { all } = useCommands();
  const open = useUi((u) => u.open);
  return (
    <Modal title="Keys" open onClose={() => open(undefined)} wide>
      <table className="table">
        <tbody>
          {all
            .filter((c) => c.keys.length > 0)
            .map((c) => (
              <tr key={c.id}>
                <td>{c.label}</td>
                <td className="kbd">{c.keys.map(keyWords).join(', ')}</td>
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
