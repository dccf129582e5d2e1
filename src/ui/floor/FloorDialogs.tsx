import './plotting.css';
import { useSessionSlice } from '../hooks.ts';
import { PhotoDialog } from '../scout/PhotoDialog.tsx';
import { PhotosDialog } from '../scout/PhotosDialog.tsx';
import { UnderlayDialog } from '../scout/UnderlayDialog.tsx';
import { CircuitDialog } from './CircuitDialog.tsx';
import { PlugAsked } from './PlugAsked.tsx';
import { RenumberDialog } from './RenumberDialog.tsx';
import { ReplaceDialog } from './ReplaceDialog.tsx';
import { RoomDialog } from './RoomDialog.tsx';
import { RowDialog } from './RowDialog.tsx';
import { TurnDialog } from './TurnDialog.tsx';

/** The dialogs that commands of the floor ask for. */
export const FloorDialogs = () => {
  const ask = useSessionSlice((s) => s.floorView.ask);
  switch (ask) {
    case 'room':
      return <RoomDialog />;
    case 'circuit':
      return <CircuitDialog />;
    case 'plug':
      return <PlugAsked />;
    case 'row':
      return <RowDialog />;
    case 'turn':
      return <TurnDialog />;
    case 'renumber':
      return <RenumberDialog />;
    case 'replace':
      return <ReplaceDialog />;
    case 'underlay':
      return <UnderlayDialog />;
    case 'photos':
      return <PhotosDialog />;
    case 'photo':
      return <PhotoDialog />;
    case 'floors':
      return null;
    case undefined:
      return null;
  }
};
