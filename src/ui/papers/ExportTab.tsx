import { useMemo, useState } from 'react';
import { dxfUnit } from '../../output/dxf.ts';
import { allLists } from '../../papers/all-lists.ts';
import { LIST_DOCS, listDoc } from '../../papers/list-columns.ts';
import type { PaperOptions } from '../../papers/sheet-info.ts';
import { drawnFloors } from '../../papers/sheet-kinds.ts';
import { planRecord, recordOf } from '../../plan/plan.ts';
import type { Assessment } from '../../report/types.ts';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import { type ExportJob, makeCsv, makeFloor, makePdf, makeWorkbook, type OutFile } from './export-files.ts';
import { useExport } from './export-state.ts';

/** The papers, the lists and the drawing as files, one at a time. */
export const ExportTab = ({
  assessment,
  options,
}: {
  readonly assessment: Assessment | undefined;
  readonly options: PaperOptions;
}) => {
  const { deliver, fonts, saveFile } = useServices();
  const { plan } = useSessionSlice((s) => ({ plan: s.plan }));
  const { running, run } = useExport();
  const [list, setList] = useState('circuits');
  const floors = drawnFloors(plan);
  const [floor, setFloor] = useState<string>();
  const floorId = floor !== undefined && floors.includes(floor) ? floor : floors[0];
  const doc = listDoc(list);
  const rows = useMemo(
    () => (assessment ? (allLists(plan, assessment, options, [list])[0]?.rows.length ?? 0) : undefined),
    [plan, assessment, options, list],
  );
  const ready = assessment !== undefined && running === undefined;

  const make = (file: (job: ExportJob) => Promise<OutFile>): void => {
    if (!assessment) return;
    void run(async ({ tell, signal }) => {
      const made = await file({ plan, assessment, options, fonts, tell, signal });
      const given = await deliver(made.name, made.bytes, made.mime);
      if (!given.ok) throw new Error(given.error.what);
      if (given.value === '') return `${made.name} was not saved: no place was chosen for it.`;
      return `${made.name} is made, ${Math.max(1, Math.round(made.bytes.length / 1024)).toLocaleString('en')} kB.`;
    });
  };

  const floorButton = (format: 'svg' | 'png' | 'dxf', name: string): React.ReactNode => (
    <button
      type="button"
      className="button"
      disabled={!ready || floorId === undefined}
      onClick={() => make((job) => makeFloor(job, floorId ?? '', format))}
    >
      {name}
    </button>
  );

  return (
    <>
      <h3 className="inspector-head">Papers</h3>
      <button type="button" className="button" disabled={!ready} onClick={() => make(makePdf)}>
        PDF of the chosen sheets
      </button>
      <h3 className="inspector-head">Lists</h3>
      <label className="papers-field">
        List
        <select className="input" value={list} onChange={(e) => setList(e.target.value)}>
          {LIST_DOCS.map((l) => (
            <option key={l.name} value={l.name}>
              {l.title}
            </option>
          ))}
        </select>
      </label>
      {doc ? (
        <details className="papers-columns">
          <summary>
            {rows === undefined ? '' : `${rows} ${rows === 1 ? 'row' : 'rows'}, `}
            {doc.columns.length} columns
          </summary>
          <p className="small">{doc.about}</p>
          <dl className="small">
            {doc.columns.map((c) => (
              <div key={c.head}>
                <dt>{c.head}</dt>
                <dd className="soft">{c.meaning}</dd>
              </div>
            ))}
          </dl>
        </details>
      ) : null}
      <div className="papers-buttons">
        <button
          type="button"
          className="button"
          disabled={!ready}
          onClick={() => make((job) => makeCsv(job, list))}
        >
          CSV of this list
        </button>
        <button type="button" className="button" disabled={!ready} onClick={() => make(makeWorkbook)}>
          Workbook of all
        </button>
      </div>
      <h3 className="inspector-head">Drawing</h3>
      <label className="papers-field">
        Floor
        <select className="input" value={floorId ?? ''} onChange={(e) => setFloor(e.target.value)}>
          {floors.map((id) => (
            <option key={id} value={id}>
              {recordOf(plan, 'floor', id)?.name || 'floor'}
            </option>
          ))}
        </select>
      </label>
      <div className="papers-buttons">
        {floorButton('svg', 'SVG')}
        {floorButton('png', 'PNG')}
        {floorButton(
          'dxf',
          `DXF in ${dxfUnit(planRecord(plan).lengthUnits) === 'in' ? 'inches' : 'millimetres'}`,
        )}
      </div>
      <h3 className="inspector-head">Plan</h3>
      <button type="button" className="button" onClick={() => void saveFile()}>
        Plan file
      </button>
    </>
  );
};
