import { useServices } from '../../services.ts';
import { useUi } from '../../ui-state.ts';
import type { Lead } from './lead.ts';
import './settings.css';

/** Beside what was assumed: leads to the place where what is known can be written. */
export const AssumedLead = ({ lead, word }: { readonly lead: Lead | undefined; readonly word?: string }) => {
  const { session } = useServices();
  const openSettings = useUi((u) => u.openSettings);
  const closeWorking = useUi((u) => u.closeWorking);
  const setFindings = useUi((u) => u.setFindings);
  if (!lead) return word === undefined ? null : <span className="assumed"> {word}</span>;
  const go = (): void => {
    if (lead.to === 'settings') return openSettings(lead.section, lead.find);
    closeWorking();
    setFindings(false);
    session.set({ workspace: lead.workspace });
  };
  const to =
    lead.to === 'settings' ? `Plan settings, ${lead.word.replace('…', '').toLowerCase()}` : lead.word;
  return (
    <button type="button" className="link assumed-lead" title={`Give what is known: ${to}`} onClick={go}>
      {word ?? lead.word}
    </button>
  );
};
