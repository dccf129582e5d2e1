// biome-ignore-all lint/a11y/useSemanticElements: rows that are drawn only where they are looked at cannot be a table's
import { colorFault, colorNoteText } from '../../plan/color-note.ts';
import { kindOf, levelId, type Plan, recordOf } from '../../plan/plan.ts';
import type { Fixture, Setup } from '../../plan/records/index.ts';
import type { Facet } from './facets.ts';
import type { Cell } from './grid-model.ts';
import { elsewhereIn } from './places.ts';

interface GridCellProps {
  readonly plan: Plan;
  readonly facet: Facet<never>['id'];
  readonly fixture: Fixture;
  readonly setup: Setup;
  readonly cell: Cell;
  readonly active: boolean;
  readonly chosen: boolean;
  /** Would get a value by the fill that is being drawn. */
  readonly filled: boolean;
  /** Takes hold of the corner of the choice, in the cell that has it. */
  readonly corner: ((e: React.PointerEvent) => void) | undefined;
  /** What is being typed into it. */
  readonly draft: string | undefined;
  readonly onDraft: (text: string | undefined) => void;
  readonly onPress: (e: React.PointerEvent) => void;
  readonly onEnter: () => void;
  readonly onOpen: () => void;
}

/** One unit in one setup: its level as a number and a bar, and its colour. */
export const GridCell = (p: GridCellProps) => {
  const level = recordOf(p.plan, 'level', levelId(p.setup.id, p.fixture.id));
  const pct = level?.levelPct;
  const note = colorNoteText(level);
  const fault = colorFault(level, kindOf(p.plan, p.fixture.kindId, 'fixture'));
  const elsewhere = p.facet === 'place' ? elsewhereIn(p.plan, p.setup.id, p.fixture.id) : undefined;
  const words = [
    elsewhere?.words ?? '',
    pct === undefined ? 'no level: full, assumed' : '',
    note,
    fault ? `${fault}: not ${level?.cctK} K` : '',
  ].filter(Boolean);
  const typing = p.active && p.draft !== undefined;
  const value = pct === undefined ? '100' : pct <= 0 ? 'off' : String(pct);
  return (
    <span
      id={`cell-${p.cell.row}-${p.cell.col}`}
      role="gridcell"
      tabIndex={-1}
      aria-colindex={p.cell.col + 2}
      aria-selected={p.chosen}
      className={p.active ? 'grid-cell active' : 'grid-cell'}
      data-state={pct === undefined ? 'assumed' : pct <= 0 ? 'off' : 'on'}
      data-fault={fault !== undefined}
      data-filled={p.filled}
      title={words.length > 0 ? words.join('; ') : undefined}
      onPointerDown={p.onPress}
      onPointerEnter={p.onEnter}
      onDoubleClick={p.onOpen}
    >
      {typing ? (
        <input
          className="grid-input"
          data-facet={p.facet}
          aria-label={`${p.facet === 'level' ? 'Level' : 'Colour'} of unit ${p.fixture.unit} in ${p.setup.name}`}
          // biome-ignore lint/a11y/noAutofocus: typing goes on where it began
          autoFocus
          value={p.draft}
          onChange={(e) => p.onDraft(e.target.value)}
          onBlur={() => p.onDraft(undefined)}
        />
      ) : p.facet === 'level' ? (
        <>
          <i className="grid-bar" style={{ width: `${Math.max(0, Math.min(100, pct ?? 100))}%` }} />
          {note ? <span className="grid-note">{note}</span> : null}
          <span>{value}</span>
        </>
      ) : p.facet === 'place' ? (
        <span className="grid-place" data-moved={elsewhere !== undefined}>
          {elsewhere?.text ?? (pct !== undefined && pct <= 0 ? 'off' : 'usual')}
        </span>
      ) : (
        <>
          <span className="grid-color">{note || (pct !== undefined && pct <= 0 ? 'off' : '–')}</span>
          {fault ? <span className="grid-fault">◆</span> : null}
        </>
      )}
      {p.corner && !typing ? (
        <i className="grid-grip" title="Draw out to fill" aria-hidden="true" onPointerDown={p.corner} />
      ) : null}
    </span>
  );
};
