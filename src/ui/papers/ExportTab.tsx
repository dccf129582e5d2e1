import { useEffect, useMemo, useRef, useState } from 'react';
import { allLists } from '../../papers/all-lists.ts';
import type { PaperOptions } from '../../papers/sheet-info.ts';
import { drawnFloors } from '../../papers/sheet-kinds.ts';
import { recordOf } from '../../plan/plan.ts';
import type { Assessment } from '../../report/types.ts';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import { type ExportJob, makeCsv, makeFloor, makePdf, makeWorkbook, type OutFile } from './export-files.ts';
import { Stopped } from './work.ts';

interface Running {
  readonly text: string;
  readonly share: number;
}

/** The papers, the lists and the drawing as files, one at a time, with how far it is and a way to stop. */
export const ExportTab = ({
  assessment,
  options,
}: {
  readonly assessment: Assessment | undefined;
  readonly options: PaperOptions;
}) => {
  const { deliver, fonts, saveFile } = useServices();
  const { plan } = useSessionSlice((s) => ({ plan: s.plan }));
  const [running, setRunning] = useState<Running>();
  const [said, setSaid] = useState('');
  const [bad, setBad] = useState(false);
  const [list, setList] = useState('circuits');
  const floors = drawnFloors(plan);
  const [floor, setFloor] = useState<string>();
  const floorId = floor !== undefined && floors.includes(floor) ? floor : floors[0];
  const stop = useRef<AbortController>(undefined);
  useEffect(() => () => stop.current?.abort(), []);
  const lists = useMemo(
    () =>
      assessment
        ? allLists(plan, assessment, options).map((l) => ({ name: l.name, rows: l.rows.length }))
        : [],
    [plan, assessment, options],
  );
  const ready = assessment !== undefined && running === undefined;

  const run = async (make: (job: ExportJob) => Promise<OutFile>): Promise<void> => {
    if (!assessment) return;
    const own = new AbortController();
    stop.current = own;
    setSaid('');
    setBad(false);
    setRunning({ text: 'Beginning', share: 0 });
    try {
      const file = await make({
        plan,
        assessment,
        options,
        fonts,
        tell: (text, share) => setRunning({ text, share }),
        signal: own.signal,
      });
      await deliver(file.name, file.bytes, file.mime);
      setSaid(`${file.name} is made, ${Math.max(1, Math.round(file.bytes.length / 1024))} kB.`);
    } catch (cause) {
      if (cause instanceof Stopped) setSaid('Stopped. Nothing was written.');
      else {
        console.error(cause);
        setBad(true);
        setSaid(
          `The file could not be made (${cause instanceof Error ? cause.message : 'unknown fault'}). The plan is not affected.`,
        );
      }
    } finally {
      setRunning(undefined);
    }
  };

  const floorButton = (format: 'svg' | 'png' | 'dxf', name: string): React.ReactNode => (
    <button
      type="button"
      className="button"
      disabled={!ready || floorId === undefined}
      onClick={() => void run((job) => makeFloor(job, floorId ?? '', format))}
    >
      {name}
    </button>
  );

  return (
    <>
      <h3 className="inspector-head">Papers</h3>
      <button type="button" className="button" disabled={!ready} onClick={() => void run(makePdf)}>
        PDF of the chosen sheets
      </button>
      <h3 className="inspector-head">Lists</h3>
      <label className="papers-field">
        List
        <select className="input" value={list} onChange={(e) => setList(e.target.value)}>
          {lists.map((l) => (
            <option key={l.name} value={l.name}>
              {l.name}, {l.rows} {l.rows === 1 ? 'row' : 'rows'}
            </option>
          ))}
        </select>
      </label>
      <div className="papers-buttons">
        <button
          type="button"
          className="button"
          disabled={!ready}
          onClick={() => void run((job) => makeCsv(job, list))}
        >
          CSV of this list
        </button>
        <button type="button" className="button" disabled={!ready} onClick={() => void run(makeWorkbook)}>
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
        {floorButton('dxf', 'DXF, release 12')}
      </div>
      <h3 className="inspector-head">Plan</h3>
      <button type="button" className="button" onClick={() => void saveFile()}>
        Plan file
      </button>
      {running ? (
        <div className="papers-progress">
          <progress max={1} value={running.share} aria-label="How far the export is" />
          <span className="soft small">{running.text}</span>
          <button type="button" className="button" onClick={() => stop.current?.abort()}>
            Stop
          </button>
        </div>
      ) : null}
      <p className={bad ? 'field-error' : 'soft small'} role="status">
        {said}
      </p>
    </>
  );
};
