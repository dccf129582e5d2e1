import { useVirtualizer } from '@tanstack/react-virtual';
import { useMemo, useRef, useState } from 'react';
import type { Kind } from '../../plan/kinds/kinds.ts';
import { planRecord } from '../../plan/plan.ts';
import { SymbolIcon } from '../common/SymbolIcon.tsx';
import { kindFigure, kindLine } from '../floor/kind-line.ts';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import { CompareTable } from './CompareTable.tsx';
import { FamilyTiles } from './FamilyTiles.tsx';
import { FAMILY_WORDS, filterKinds, type GearFilters, noFilters } from './filters.ts';
import { GearFilterBar } from './GearFilterBar.tsx';
import { ImportDialog } from './ImportDialog.tsx';
import { KindForms } from './KindForms.tsx';
import { OwnBookTools } from './OwnBookTools.tsx';
import './gear.css';

const ROW_PX = 40;
const COMPARED = 4;

/** The gear book: find, filter, look into, lay side by side; own kinds apart from the built-in ones. */
export const GearWorkspace = () => {
  const { book } = useServices();
  const units = useSessionSlice((s) => planRecord(s.plan).lengthUnits);
  const [filters, setFilters] = useState<GearFilters>(noFilters);
  const [chosen, setChosen] = useState<readonly string[]>([]);
  const [dialog, setDialog] = useState<'import' | 'form' | undefined>(undefined);
  const found = useMemo(() => filterKinds(book.kinds(), filters), [book, filters]);
  const kinds = chosen.flatMap((slug) => book.find(slug) ?? []);
  const scroll = useRef<HTMLDivElement>(null);
  const rows = useVirtualizer({
    count: found.length,
    getScrollElement: () => scroll.current,
    estimateSize: () => ROW_PX,
    overscan: 10,
  });

  const toggle = (k: Kind, add: boolean): void => {
    if (!add) return setChosen([k.slug]);
    setChosen(
      chosen.includes(k.slug) ? chosen.filter((s) => s !== k.slug) : [...chosen, k.slug].slice(-COMPARED),
    );
  };

  return (
    <div className="gear">
      <section className="gear-side" aria-label="Gear book">
        <GearFilterBar filters={filters} onChange={setFilters} count={found.length} />
        <div
          ref={scroll}
          className="gear-list"
          tabIndex={0}
          role="listbox"
          aria-label="Kinds"
          aria-multiselectable="true"
        >
          <div className="gear-spacer" style={{ height: rows.getTotalSize() }}>
            {rows.getVirtualItems().map((row) => {
              const k = found[row.index];
              if (!k) return null;
              return (
                <button
                  key={k.id}
                  type="button"
                  role="option"
                  aria-selected={chosen.includes(k.slug)}
                  className="shelf-item gear-row"
                  style={{ transform: `translateY(${row.start}px)` }}
                  onClick={(e) => toggle(k, e.shiftKey || e.ctrlKey || e.metaKey)}
                >
                  <SymbolIcon symbolId={k.symbol} />
                  <span className="shelf-text">
                    <span className="strong">{k.name}</span>
                    <span className="soft">
                      {k.origin.book === 'built-in' ? '' : 'own · '}
                      {kindLine(k, units) || FAMILY_WORDS[k.family]}
                    </span>
                  </span>
                  <span className="shelf-figure">{kindFigure(k)}</span>
                </button>
              );
            })}
          </div>
        </div>
        <OwnBookTools onImport={() => setDialog('import')} onForm={() => setDialog('form')} />
      </section>
      <main className="gear-main" aria-label="Chosen kinds">
        {kinds.length === 0 ? (
          <div className="inspector-empty">
            <h2>Choose a kind</h2>
            <p className="soft">
              Its figures show here with where each is from. With Shift or Ctrl, up to {COMPARED} kinds stand
              side by side.
            </p>
            <FamilyTiles kinds={book.kinds()} onChoose={(family) => setFilters({ ...filters, family })} />
          </div>
        ) : (
          <CompareTable kinds={kinds} onDrop={(k) => toggle(k, true)} />
        )}
      </main>
      {dialog === 'import' ? <ImportDialog onClose={() => setDialog(undefined)} /> : null}
      {dialog === 'form' ? (
        <KindForms
          from={kinds[0]}
          onClose={(slug) => {
            setDialog(undefined);
            if (slug) setChosen([slug]);
          }}
        />
      ) : null}
    </div>
  );
};
