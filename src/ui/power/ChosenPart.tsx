import type { SupplyEntity } from '../../derive/types.ts';
import { formatAmps } from '../../kernel/units.ts';
import { explainRoom } from '../../report/explain-place.ts';
import { roomLeft } from '../../report/room.ts';
import type { Assessment } from '../../report/types.ts';
import { TriedFigure } from '../common/Figure.tsx';
import { EntityFigures } from '../floor/EntityFigures.tsx';
import { FindingCard } from '../floor/FindingList.tsx';
import { LoadFigures } from '../floor/LoadFigures.tsx';
import { useServices } from '../services.ts';

/** The chosen part of the diagram: its figures, each with its working, its findings, and where else it is. */
export const ChosenPart = ({
  entity,
  assessment,
  onTop,
}: {
  readonly entity: SupplyEntity | undefined;
  readonly assessment: Assessment;
  readonly onTop: (recordId: string) => void;
}) => {
  const { session } = useServices();
  if (!entity)
    return (
      <aside className="one-line-part" aria-label="Chosen part">
        <p className="soft">
          Choose a source, box, way, run or load: its figures stand here, and each opens its working.
        </p>
      </aside>
    );
  const found = assessment.findings.filter(
    (f) =>
      f.recordIds[0] === entity.recordId && (entity.wayId === undefined || f.id.endsWith(`:${entity.key}`)),
  );
  const room =
    entity.what === 'load' || entity.what === 'cable' ? undefined : roomLeft(assessment, entity.key);
  return (
    <aside className="one-line-part" aria-label="Chosen part">
      <h3 className="power-source">{entity.label}</h3>
      {entity.what === 'load' ? (
        <LoadFigures recordId={entity.recordId} />
      ) : (
        <EntityFigures recordId={entity.recordId} wayId={entity.wayId} />
      )}
      {room ? (
        <p className="soft small">
          {room.freeA < 0 ? 'No room' : 'Room'} left in the worst setup:{' '}
          <TriedFigure working={(plan) => explainRoom(plan, assessment, entity.key)}>
            {formatAmps(room.freeA)}
          </TriedFigure>{' '}
          on its fullest leg, held by {room.setBy}. Computed from this plan; other loads unknown.
        </p>
      ) : null}
      <p className="one-line-part-acts">
        <button type="button" className="button" onClick={() => session.set({ workspace: 'floor' })}>
          On the floor
        </button>
        {entity.what === 'source' || entity.what === 'box' ? (
          <button type="button" className="button" onClick={() => onTop(entity.recordId)}>
            Only this
          </button>
        ) : null}
      </p>
      {found.map((f) => (
        <FindingCard key={f.id} finding={f} />
      ))}
    </aside>
  );
};
