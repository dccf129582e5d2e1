import { useMemo, useRef, useState } from 'react';
import { compareNatural } from '../../kernel/ids.ts';
import type { Kind } from '../../plan/kinds/kinds.ts';
import { fixturePlace, kindOf, type Plan, planRecord, recordsOf } from '../../plan/plan.ts';
import { SymbolIcon } from '../common/SymbolIcon.tsx';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import { feedLabel } from './feed.ts';
import { kindFigure, kindLine } from './kind-line.ts';
import { placeKind } from './placing.ts';

const SHOWN = 12;

/** Words for cable, which is run between things and not placed by itself. */
const CABLE_WORDS = /\b(cables?|stingers?|extensions?|cords?|feeders?|leads?|jumpers?)\b/i;

const USED: readonly string[] = ['fixture', 'box', 'stand', 'grip', 'device'];

/** Slugs of the kinds that stand in a plan, those it has most of first, parted by spaces. */
const usedSlugs = (plan: Plan): string => {
  const counts = new Map<string, number>();
  for (const r of plan.records.values())
    if (USED.includes(r.type) && 'kindId' in r && typeof r.kindId === 'string') {
      const slug = r.kindId.split('@')[0] ?? '';
      counts.set(slug, (counts.get(slug) ?? 0) + (r.type === 'fixture' ? 1000 : 1));
    }
  return [...counts]
    .sort((a, b) => b[1] - a[1] || compareNatural(a[0], b[0]))
    .slice(0, SHOWN)
    .map(([slug]) => slug)
    .join(' ');
};

/** The shelf: find gear by name, type or watts, put it on the floor, and the list of what is there already. */
export const GearShelf = () => {
  const { session, book, searchGear } = useServices();
  const [query, setQuery] = useState('');
  const [active, setActive] = useState(0);
  const inputRef = useRef<HTMLInputElement>(null);
  const placing = useSessionSlice((s) => s.placing);
  const readOnly = useSessionSlice((s) => s.readOnly);
  const units = useSessionSlice((s) => planRecord(s.plan).lengthUnits);
  const used = useSessionSlice((s) => usedSlugs(s.plan));
  const found = useMemo(() => {
    if (query.trim() !== '') return searchGear(query, SHOWN);
    // Nothing asked for: what this plan has already, then the book.
    const slugs = used.split(' ').filter(Boolean);
    const again = slugs.flatMap((slug) => book.kinds().find((k) => k.slug === slug) ?? []);
    const rest = searchGear('', SHOWN).filter((k) => !slugs.includes(k.slug));
    return [...again, ...rest].slice(0, Math.max(SHOWN, again.length));
  }, [searchGear, query, used, book]);

  const placed = useMemo(
    () => (placing ? book.kinds().find((k) => k.slug === placing.kindSlug) : undefined),
    [book, placing],
  );

  const choose = (kind: Kind): void =>
    session.set({ placing: { kindSlug: kind.slug }, tool: 'place', message: '' });
  const place = (kind: Kind): void => placeKind(session, book, kind);

  return (
    <aside className="shelf" aria-label="Gear and floor list">
      <div className="shelf-find">
        <input
          ref={inputRef}
          id="gear-search"
          className="input"
          type="search"
          role="combobox"
          aria-expanded="true"
          aria-controls="gear-results"
          aria-activedescendant={found[active] ? `gear-${found[active].slug}` : undefined}
          aria-label="Find gear by name, type or watts"
          placeholder="Find gear"
          value={query}
          onChange={(e) => {
            setQuery(e.target.value);
            setActive(0);
          }}
          onKeyDown={(e) => {
            if (e.key === 'ArrowDown') setActive(Math.min(active + 1, found.length - 1));
            else if (e.key === 'ArrowUp') setActive(Math.max(active - 1, 0));
            else if (e.key === 'Enter' && found[active]) place(found[active]);
            else if (e.key === 'Escape') setQuery('');
            else return;
            e.preventDefault();
          }}
        />
        <p className="shelf-hint">
          {placing
            ? `Placing ${placed?.name ?? 'gear'}: click on the floor. Escape ends.`
            : 'Click or drag onto the floor. Enter places at the pointer.'}
        </p>
      </div>
      <div id="gear-results" className="shelf-results" role="listbox" aria-label="Gear found">
        {found.length === 0 ? (
          <p className="shelf-empty">
            {CABLE_WORDS.test(query)
              ? 'Cable is not placed: press Cable (C), then on what takes the power and on what gives it. Its length and pieces follow.'
              : `Nothing like “${query}”. Try a type (“panel”), a source (“tungsten”) or watts (“650”).`}
          </p>
        ) : null}
        {found.map((k, i) => (
          <button
            key={k.slug}
            id={`gear-${k.slug}`}
            type="button"
            role="option"
            tabIndex={-1}
            aria-selected={placing ? placing.kindSlug === k.slug : i === active && query !== ''}
            className="shelf-item"
            disabled={readOnly}
            onClick={() => choose(k)}
            onPointerDown={(e) => {
              if (e.pointerType !== 'mouse' || e.button !== 0 || readOnly) return;
              session.set({ placing: { kindSlug: k.slug, dragging: true }, tool: 'place', message: '' });
            }}
            onDoubleClick={() => place(k)}
          >
            <SymbolIcon symbolId={k.symbol} />
            <span className="shelf-text">
              <span className="strong" title={k.name}>
                {k.name}
              </span>
              <span className="soft">{kindLine(k, units)}</span>
            </span>
            <span className="shelf-figure">{kindFigure(k)}</span>
          </button>
        ))}
      </div>
      <FloorList />
    </aside>
  );
};

/** Everything with a unit number on this floor; choosing a line selects it on the drawing. */
const FloorList = () => {
  const { session } = useServices();
  const s = useSessionSlice((x) => ({ plan: x.plan, floorId: x.floorId, selection: x.selection }));
  const fixtures = useMemo(
    () =>
      recordsOf(s.plan, 'fixture')
        .filter((f) => f.floorId === s.floorId)
        .sort((a, b) => compareNatural(a.unit, b.unit)),
    [s.plan, s.floorId],
  );
  return (
    <section className="floor-list" aria-label="On this floor">
      <h2 className="panel-head">
        On this floor · {fixtures.length} {fixtures.length === 1 ? 'fixture' : 'fixtures'}
      </h2>
      {fixtures.length === 0 ? (
        <p className="shelf-empty">No fixtures yet. Find one above and place it on the drawing.</p>
      ) : null}
      <ul>
        {fixtures.map((f) => {
          const kind = kindOf(s.plan, f.kindId, 'fixture');
          return (
            <li key={f.id}>
              <button
                type="button"
                className="shelf-item floor-item"
                aria-pressed={s.selection.has(f.id)}
                onClick={(e) => {
                  const next = new Set(e.shiftKey ? s.selection : []);
                  if (next.has(f.id)) next.delete(f.id);
                  else next.add(f.id);
                  session.set({ selection: next });
                }}
                onDoubleClick={() =>
                  session.set({
                    camera: { ...session.getState().camera, center: fixturePlace(s.plan, f).at },
                  })
                }
              >
                <SymbolIcon symbolId={kind?.symbol ?? 'unit-plain'} />
                <span className="shelf-text">
                  <span className="strong" title={kind?.name}>
                    {f.unit} <span>{kind?.name ?? 'kind missing'}</span>
                  </span>
                  <span className="shelf-under">
                    <span className="soft">{f.use || '—'}</span>
                    <span className="shelf-figure">{feedLabel(s.plan, f)}</span>
                  </span>
                </span>
              </button>
            </li>
          );
        })}
      </ul>
    </section>
  );
};
