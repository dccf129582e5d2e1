import type { Kind } from '../../plan/kinds/kinds.ts';
import { KindForm } from './KindForm.tsx';
import { OtherKindForm } from './OtherKindForm.tsx';

/** The form for one own kind: of lights from the ground up, of other families from a kind of the book. */
export const KindForms = ({
  from,
  onClose,
}: {
  readonly from: Kind | undefined;
  readonly onClose: (slug?: string) => void;
}) =>
  from && from.family !== 'fixture' ? (
    <OtherKindForm from={from} onClose={onClose} />
  ) : (
    <KindForm from={from} onClose={onClose} />
  );
