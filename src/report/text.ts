import type { Plan } from '../plan/plan.ts';
import { batteryTexts } from './text/battery.ts';
import { type Writer, writerContext } from './text/context.ts';
import { controlTexts } from './text/control.ts';
import { dimmerTexts } from './text/dimmers.ts';
import { lineTexts } from './text/lines.ts';
import { measuredTexts } from './text/measured.ts';
import { overloadTexts } from './text/overload.ts';
import { protectionTexts } from './text/protection.ts';
import { radioTexts } from './text/radio.ts';
import { riggingTexts } from './text/rigging.ts';
import { siteTexts } from './text/site.ts';
import { sourceTexts } from './text/sources.ts';
import { structureTexts } from './text/structure.ts';
import { voltsTexts } from './text/volts.ts';
import type { Finding, FindingText } from './types.ts';

const texts: ReadonlyMap<string, Writer> = new Map(
  Object.entries({
    ...overloadTexts,
    ...voltsTexts,
    ...structureTexts,
    ...protectionTexts,
    ...dimmerTexts,
    ...sourceTexts,
    ...controlTexts,
    ...radioTexts,
    ...lineTexts,
    ...riggingTexts,
    ...siteTexts,
    ...batteryTexts,
    ...measuredTexts,
  }),
);

/** Rules that have words. Every rule an engine reports is among them; a test holds them together. */
export const wordedRules: ReadonlySet<string> = new Set(texts.keys());

/** A finding in words: what, the arithmetic and the limit, what to do, where the limit is from. */
export const findingText = (plan: Plan, finding: Finding): FindingText => {
  const write = texts.get(finding.rule);
  if (!write) throw new Error(`no words for rule ${finding.rule}`);
  return write(writerContext(plan, finding));
};
