import type { Kind } from '../../plan/kinds/kinds.ts';
import { SymbolIcon } from '../common/SymbolIcon.tsx';
import { FAMILY_WORDS, type GearFilters } from './filters.ts';

/** The book by families, to browse it from: a symbol, the family's name, and how many kinds it has. */
export const FamilyTiles = ({
  kinds,
  onChoose,
}: {
  readonly kinds: readonly Kind[];
  readonly onChoose: (family: GearFilters['family']) => void;
}) => {
  const families = Object.entries(FAMILY_WORDS).flatMap(([family, words]) => {
    const own = kinds.filter((k) => k.family === family);
    const middle = own[Math.floor(own.length / 2)];
    return middle ? [{ family: middle.family, words, count: own.length, symbolId: middle.symbol }] : [];
  });
  return (
    <ul className="family-tiles">
      {families.map((f) => (
        <li key={f.family}>
          <button type="button" className="family-tile" onClick={() => onChoose(f.family)}>
            <SymbolIcon symbolId={f.symbolId} size={32} />
            <span className="strong">{f.words}</span>
            <span className="soft">{f.count}</span>
          </button>
        </li>
      ))}
    </ul>
  );
};
