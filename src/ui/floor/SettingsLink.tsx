import type { AnyRecord } from '../../plan/records/index.ts';
import { Row } from '../common/Field.tsx';
import { useUi } from '../ui-state.ts';

/** From what is chosen to the settings of the plan that say more of it. */
export const SettingsLink = ({ record }: { readonly record: AnyRecord }) => {
  const openSettings = useUi((u) => u.openSettings);
  if (record.type === 'source')
    return (
      <Row label="Known of it">
        <button type="button" className="link" onClick={() => openSettings('sources')}>
          rating, impedance, main, tank…
        </button>
      </Row>
    );
  if (record.type !== 'box' && record.type !== 'outlet') return null;
  return (
    <Row label="Stands">
      <button type="button" className="link" onClick={() => openSettings('place')}>
        {record.wet === undefined
          ? 'wet or dry not said…'
          : record.wet
            ? 'outdoors or wet…'
            : 'indoors and dry…'}
      </button>
    </Row>
  );
};
