import { useMemo, useRef, useState } from 'react';
import { compareNatural } from '../../kernel/ids.ts';
import { formatWatts } from '../../kernel/units.ts';
import type { Kind } from '../../plan/kinds/kinds.ts';
import { fixturePlace, kindOf, recordsOf } from '../../plan/plan.ts';
import { SymbolIcon } from '../common/SymbolIcon.tsx';
import { wattsOf, wattsUnknown } from '../gear/filters.ts';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import { feedLabel } from './feed.ts';
import { placeKind } from './placing.ts';

const SHOWN = 12;

/** The shelf: find gear by name, type or watts, put it on the floor, and the list of what is there already. */
export const GearShelf = () => {
  const { session, book, searchGear } = useServices();
  const [query, setQuery] = useState('');
  const [active, setActive] = useState(0);
  const inputRef = useRef<HTMLInputElement>(null);
  const placing = useSessionSlice((s) => s.placing);
  const readOnly = useSessionSlice((s) => s.readOnly);
  const found = useMemo(() => searchGear(query, SHOWN), [searchGear, query]);

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
            ? 'Click on the floor to place it. Escape ends.'
            : 'Click, then click the floor. Enter places at the centre.'}
        </p>
      </div>
      <div id="gear-results" className="shelf-results" role="listbox" aria-label="Gear found">
        {found.length === 0 ? (
          <p className="shelf-empty">
            Nothing like “{query}”. Try a type (“panel”), a source (“tungsten”) or watts (“650”).
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
            onDoubleClick={() => place(k)}
          >
            <SymbolIcon symbolId={k.symbol} />
            <span className="shelf-text">
              <span className="strong">{k.name}</span>
              <span className="soft">{kindLine(k)}</span>
            </span>
            <span className="shelf-figure">{kindFigure(k)}</span>
          </button>
        ))}
      </div>
      <FloorList />
    </aside>
  );
};

/** One line on a kind: what matters when choosing it. */
const kindLine = (k: Kind): string => {
  switch (k.family) {
    case 'fixture':
      return [
        k.ownCellsWh ? 'own cells' : k.needsBallast ? 'with ballast' : '',
        k.mount.fits.map((m) => MOUNT_WORDS[m]).join(', '),
      ]
        .filter(Boolean)
        .join(' · ');
    case 'stand':
      return `${k.ratedLoadKg} kg · ${(k.heightMinMm / 1000).toFixed(1)}–${(k.heightMaxMm / 1000).toFixed(1)} m`;
    case 'grip':
      return [
        k.areaM2 ? `${k.areaM2.toFixed(1)} m²` : '',
        k.stands > 0 ? `${k.stands} ${k.stands === 1 ? 'stand' : 'stands'}` : '',
        `${k.massKg} kg`,
      ]
        .filter(Boolean)
        .join(' · ');
    case 'rigging':
      return [
        k.ratedLoadKg ? `${k.ratedLoadKg} kg` : 'load by its maker',
        k.people ? `${k.people} people` : '',
      ]
        .filter(Boolean)
        .join(' · ');
    case 'box':
      return `${k.ways.length} ways${k.mainBreakerA ? ` · ${k.mainBreakerA} A main` : ''}`;
    case 'source':
      return [`${k.system} V`, k.ratedKva ? `${k.ratedKva} kVA` : ''].filter(Boolean).join(' · ');
    case 'pack':
      return `${k.voltsV} V · ${k.continuousA} A`;
    case 'charger':
      return `${k.bays} ${k.bays === 1 ? 'bay' : 'bays'} · ${k.bayW} W each`;
    case 'transmitter':
    case 'receiver':
    case 'repeater':
      return `${k.universes} ${k.universes === 1 ? 'universe' : 'universes'}`;
    default:
      return k.also[0] ?? '';
  }
};

const MOUNT_WORDS: Readonly<Record<string, string>> = {
  'pin-16': '5/8 in',
  'spigot-28': '1-1/8 in',
  clamp: 'clamp',
  clip: 'clips',
  socket: 'socket',
  hung: 'hung',
  floor: 'floor',
  held: 'held',
};

const kindFigure = (k: Kind): string => {
  if (wattsUnknown(k)) return 'watts not known';
  if (k.family === 'pack') return `${k.energyWh} Wh`;
  const wattsW = wattsOf(k);
  return wattsW === undefined ? '' : formatWatts(wattsW);
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
                className="shelf-item"
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
                  <span className="strong">
                    {f.unit} <span>{kind?.name ?? 'kind missing'}</span>
                  </span>
                  <span className="soft">{f.use || '—'}</span>
                </span>
                <span className="shelf-figure">{feedLabel(s.plan, f)}</span>
              </button>
            </li>
          );
        })}
      </ul>
    </section>
  );
};
