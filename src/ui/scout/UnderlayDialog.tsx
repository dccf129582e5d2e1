import { useEffect, useRef, useState } from 'react';
import { type DxfDrawing, MAX_DXF_BYTES, readDxf } from '../../import/dxf/dxf.ts';
import { likelyUnit } from '../../import/dxf/units.ts';
import { problemText } from '../../kernel/result.ts';
import { lineWorkBlob } from '../../plan/line-work.ts';
import { planRecord, recordOf } from '../../plan/plan.ts';
import { Modal } from '../common/Modal.tsx';
import { closeAsk } from '../floor/ask.ts';
import { useSessionSlice } from '../hooks.ts';
import type { PdfPages } from '../pictures.ts';
import { useServices } from '../services.ts';
import { layUnder, pictureSource, plainName, UNDERLAY_FILES } from './bring.ts';
import './scout.css';
import { UnitChoice } from './UnitChoice.tsx';
import type { WaitingLines } from './waiting.ts';

/** A PDF of several pages waits for one to be chosen. */
interface Waiting {
  readonly name: string;
  readonly pages: PdfPages;
}

/** Lays a picture or a page of a PDF under the floor. The file is read, drawn once and kept in the plan. */
export const UnderlayDialog = () => {
  const { session, pictures } = useServices();
  const replaced = useSessionSlice((s) => s.floorView.askFor);
  const old = useSessionSlice((s) =>
    s.floorView.askFor === undefined ? undefined : recordOf(s.plan, 'underlay', s.floorView.askFor),
  );
  const [busy, setBusy] = useState('');
  const [problem, setProblem] = useState('');
  const [pdf, setPdf] = useState<Waiting | undefined>(undefined);
  const [page, setPage] = useState('1');
  const [lines, setLines] = useState<WaitingLines | undefined>(undefined);
  const open = useRef<PdfPages | undefined>(undefined);
  useEffect(() => () => open.current?.close(), []);

  const done = (text: string): void => {
    setBusy('');
    if (text) setProblem(text);
  };

  const takePage = async (waiting: Waiting, number: number): Promise<void> => {
    setBusy(`Drawing page ${number} of ${waiting.name}…`);
    const baked = await waiting.pages.bake(number);
    if (!baked.ok) return done(problemText(baked.error));
    const name =
      waiting.pages.count > 1 ? `${plainName(waiting.name)}, page ${number}` : plainName(waiting.name);
    const laid = layUnder(session, pictureSource(name, baked.value), '', replaced);
    done(laid.ok ? '' : laid.error);
  };

  const takeLines = async (file: File): Promise<void> => {
    if (file.size > MAX_DXF_BYTES)
      return done(`${file.name} is too large (${Math.round(file.size / 1e6)} MB).`);
    const read = readDxf(new Uint8Array(await file.arrayBuffer()), file.name);
    if (!read.ok) return done(problemText(read.error));
    const { mmPerUnit, widthUnits, heightUnits } = read.value;
    if (mmPerUnit !== undefined) return layLines(file.name, read.value, mmPerUnit, '');
    const imperial = planRecord(session.getState().plan).lengthUnits === 'imperial';
    setLines({
      name: file.name,
      drawing: read.value,
      unit: likelyUnit(Math.max(widthUnits, heightUnits), imperial),
    });
    done('');
  };

  const layLines = (file: string, drawing: DxfDrawing, mmPerUnit: number, unit: string): void => {
    const { widthUnits, heightUnits, notices, work } = drawing;
    const source = {
      name: plainName(file),
      what: 'lines' as const,
      blob: lineWorkBlob(work),
      widthUnits,
      heightUnits,
      mmPerUnit,
    };
    const told = [unit ? `Read in ${unit}, as chosen: check one length.` : '', ...notices].filter(Boolean);
    const laid = layUnder(session, source, told.join(' '), replaced);
    done(laid.ok ? '' : laid.error);
  };

  const take = async (file: File): Promise<void> => {
    setProblem('');
    setPdf(undefined);
    setLines(undefined);
    setBusy(`Reading ${file.name}…`);
    if (/\.pdf$/i.test(file.name) || file.type === 'application/pdf') {
      const read = await pictures.pdf(file);
      if (!read.ok) return done(problemText(read.error));
      open.current?.close();
      open.current = read.value;
      const waiting = { name: file.name, pages: read.value };
      if (read.value.count === 1) return takePage(waiting, 1);
      setPdf(waiting);
      setPage('1');
      return done('');
    }
    if (/\.dxf$/i.test(file.name)) return takeLines(file);
    const baked = await pictures.picture(file, 'underlay');
    if (!baked.ok) return done(problemText(baked.error));
    const laid = layUnder(
      session,
      pictureSource(plainName(file.name), baked.value),
      baked.value.notice,
      replaced,
    );
    done(laid.ok ? '' : laid.error);
  };

  const choose = (): void => {
    const number = Number(page);
    if (!pdf) return;
    if (!(Number.isInteger(number) && number >= 1 && number <= pdf.pages.count))
      return setProblem(`${pdf.name} has pages 1 to ${pdf.pages.count}.`);
    setProblem('');
    void takePage(pdf, number);
  };

  return (
    <Modal
      title={old ? `Replace underlay ${old.name}` : 'Lay a picture or drawing under the floor'}
      open
      onClose={() => closeAsk(session)}
    >
      <form
        className="ask-form"
        onSubmit={(e) => {
          e.preventDefault();
          choose();
        }}
      >
        <p className="soft">
          A scan, a photo of a plan, a page of a PDF (PNG, JPEG, WebP, SVG, PDF) or line work (DXF). It stays
          on this computer, inside the plan.
        </p>
        <label>
          File
          <input
            className="input"
            type="file"
            accept={UNDERLAY_FILES}
            disabled={busy !== ''}
            onChange={(e) => {
              const file = e.target.files?.[0];
              if (file) void take(file);
            }}
          />
        </label>
        {pdf ? (
          <>
            <label>
              Page, 1 to {pdf.pages.count}
              <input
                className="input"
                inputMode="numeric"
                ref={(el) => {
                  if (el && document.activeElement?.tagName !== 'INPUT') el.focus();
                }}
                value={page}
                onChange={(e) => setPage(e.target.value)}
              />
            </label>
            <button type="submit" className="button primary" disabled={busy !== ''}>
              Lay this page under the floor
            </button>
          </>
        ) : null}
        {lines ? (
          <UnitChoice lines={lines} onChange={(unit) => setLines({ ...lines, unit })} onTake={layLines} />
        ) : null}
        {busy ? <p role="status">{busy}</p> : null}
        {problem ? (
          <p className="field-error" role="alert">
            {problem}
          </p>
        ) : null}
      </form>
    </Modal>
  );
};
