import { useEffect } from 'react';
import { useExport } from './export-state.ts';
import './export-bar.css';

/** How far the file is that is being made, with a way to stop it; then what came of it. */
export const ExportBar = ({ floating = false }: { readonly floating?: boolean }) => {
  const { running, said, bad, stop, clear } = useExport();
  useEffect(() => (floating ? undefined : clear), [floating, clear]);
  if (floating && !running && said === '') return null;
  return (
    <div className={`export-bar${floating ? ' floating' : ''}${running || said ? '' : ' empty'}`}>
      {running ? (
        <>
          <progress max={1} value={running.share} aria-label="How far the export is" />
          <span className="soft small">{running.text}</span>
          <button type="button" className="button" onClick={stop}>
            Stop
          </button>
        </>
      ) : null}
      <p className={bad ? 'field-error' : 'small'} role="status">
        {running ? '' : said}
      </p>
      {!running && said !== '' ? (
        <button type="button" className="button quiet" onClick={clear}>
          Close
        </button>
      ) : null}
    </div>
  );
};
