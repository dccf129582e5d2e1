import { type Plan, planRecord } from '../plan/plan.ts';
import type { PaperOptions } from './sheet-info.ts';

/** Title, subject, author and date of the PDF, from the plan's title block and the state of issue. */
export const paperMetadata = (plan: Plan, options: PaperOptions) => {
  const head = planRecord(plan);
  return {
    title: [head.production, head.title].filter(Boolean).join(' – '),
    subject: !options.revision
      ? 'Lighting papers, not issued'
      : options.draft
        ? `Lighting papers, draft of revision ${options.revision}`
        : `Lighting papers, revision ${options.revision}`,
    author: head.people['drawn-by'] ?? '',
    ...(options.date ? { date: options.date } : {}),
  };
};
