import { toScreen } from '../../editor/camera.ts';
import { useSessionSlice } from '../hooks.ts';

/** What is being typed for the tool at work, beside the spot it is about. */
export const EntryTag = () => {
  const { entry, camera, viewport } = useSessionSlice((s) => ({
    entry: s.overlay.entry,
    camera: s.camera,
    viewport: s.viewport,
  }));
  if (!entry) return null;
  const at = toScreen(camera, viewport, entry.at);
  const x = Math.max(4, Math.min(viewport.widthPx - 190, at.x + 16));
  const y = Math.max(4, Math.min(viewport.heightPx - 40, at.y + 14));
  return (
    <output className="entry-tag" data-wrong={entry.wrong} style={{ transform: `translate(${x}px, ${y}px)` }}>
      {entry.text !== '' ? <span className="entry-text">{entry.text}</span> : null}
      <span className={entry.wrong ? 'entry-hint wrong' : 'entry-hint'}>{entry.hint}</span>
    </output>
  );
};
