import { useMemo, useState } from 'react';
import { problemText } from '../../../kernel/result.ts';
import { isEmptyChange } from '../../../plan/change-set.ts';
import { settingsChange, withSetting } from '../../../plan/edits/settings.ts';
import { type Plan, planRecord } from '../../../plan/plan.ts';
import { assess } from '../../../report/assess.ts';
import { settingsWords } from '../../../report/settings-words.ts';
import type { Assessment, Severity } from '../../../report/types.ts';
import { Modal } from '../../common/Modal.tsx';
import { TabStrip } from '../../common/TabStrip.tsx';
import { useSessionSlice, useSettled } from '../../hooks.ts';
import { useServices } from '../../services.ts';
import { useUi } from '../../ui-state.ts';
import { PlaceSection } from './PlaceSection.tsx';
import { PracticeSection } from './PracticeSection.tsx';
import { RulesSection } from './RulesSection.tsx';
import { SourcesSection } from './SourcesSection.tsx';
import { SETTINGS_SECTIONS } from './sections.ts';
import '../dialogs.css';
import './settings.css';

const SCREENS = {
  practice: PracticeSection,
  place: PlaceSection,
  sources: SourcesSection,
  rules: RulesSection,
} as const;

/** What holds for the whole plan. Looked through before it is kept, with what it changes in words; one undo step. */
export const SettingsDialog = () => {
  const { session } = useServices();
  const at = useUi((u) => u.settingsAt);
  const openSettings = useUi((u) => u.openSettings);
  const close = useUi((u) => u.open);
  const { plan, readOnly, assessment } = useSessionSlice((s) => ({
    plan: s.plan,
    readOnly: s.readOnly,
    assessment: s.assessment,
  }));
  const [base] = useState(plan);
  const [draft, setDraft] = useState<Plan>(plan);
  const [fault, setFault] = useState('');
  const changes = useMemo(() => settingsChange(base, draft), [base, draft]);
  const unchanged = isEmptyChange(changes);
  const unreasoned = planRecord(draft).limits.find((l) => l.reason.trim() === '');
  const Screen = SCREENS[at];
  const onSet = (id: string, patch: Readonly<Record<string, unknown>>): void => {
    const r = withSetting(draft, id, patch);
    if (r.ok) setDraft(r.value);
    setFault(r.ok ? '' : problemText(r.error));
  };
  const keep = (): void => {
    session.commit('Change plan settings', changes);
    close(undefined);
  };
  return (
    <Modal
      title="Plan settings"
      open
      onClose={() => close(undefined)}
      wide
      foot={
        <>
          <span className="settings-foot soft" role="status">
            {unreasoned
              ? `Give a reason for your own value of “${unreasoned.limit}”.`
              : unchanged
                ? 'Nothing is changed.'
                : 'Nothing in the plan changes until you keep it. Undo takes all of it back.'}
          </span>
          <button type="button" className="button" onClick={() => close(undefined)}>
            Discard
          </button>
          <button
            type="button"
            className="button primary"
            disabled={readOnly || unchanged || unreasoned !== undefined}
            onClick={keep}
          >
            Keep
          </button>
        </>
      }
    >
      <TabStrip
        label="Plan settings"
        id="settings"
        tabs={SETTINGS_SECTIONS}
        chosen={at}
        onChoose={openSettings}
      />
      <div
        id="settings-panel"
        className="settings"
        role="tabpanel"
        aria-label={SETTINGS_SECTIONS.find((s) => s.id === at)?.name}
      >
        <Screen draft={draft} disabled={readOnly} onSet={onSet} onPlan={setDraft} />
        {fault ? (
          <p className="field-error" role="alert">
            {fault}
          </p>
        ) : null}
      </div>
      {unchanged ? null : <Effects base={base} draft={draft} assessment={assessment} />}
    </Modal>
  );
};

const LEVELS: readonly Severity[] = ['stop', 'warn', 'note'];

/** What the change brings, in words and in findings. */
const Effects = ({
  base,
  draft,
  assessment,
}: {
  readonly base: Plan;
  readonly draft: Plan;
  readonly assessment: Assessment | undefined;
}) => {
  const words = useMemo(() => settingsWords(base, draft), [base, draft]);
  const settled = useSettled(draft, 250);
  const after = useMemo(() => assess(settled, { revision: 0, previous: assessment }), [settled, assessment]);
  const count = (a: Assessment, level: Severity): number =>
    a.findings.filter((f) => f.severity === level).length;
  return (
    <section className="settings-effects" aria-label="What this changes">
      <h3 className="inspector-head">What this changes</h3>
      {assessment ? (
        <p className="strong">
          Findings: {LEVELS.map((l) => `${l} ${count(assessment, l)} → ${count(after, l)}`).join(' · ')}
        </p>
      ) : null}
      <ul className="assumptions">
        {words.map((w) => (
          <li key={w}>{w}</li>
        ))}
      </ul>
    </section>
  );
};
