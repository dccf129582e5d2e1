import type { LengthUnits } from '../kernel/units.ts';
import { type Plan, planRecord, recordOf, setupsOf } from '../plan/plan.ts';
import { type PlanChange, planChanges } from '../report/changes.ts';
import type { Assessment } from '../report/types.ts';
import { drawFrame, frameOf, type Rect } from './frame.ts';
import { type Ink, makeInk, type Notices } from './ink.ts';
import type { Page } from './page.ts';
import { type Sheet, sheetOf } from './sheets.ts';
import { drawTitleBlock, type TitleFields } from './title-block.ts';
import { drawTitleStrip, LEAST_STRIP_MM } from './title-strip.ts';

/** What issuing a set of papers needs besides the plan and its assessment. */
export interface PaperOptions {
  /** The setup that is shown; the first one when left out. */
  readonly setupId?: string | undefined;
  readonly revision: string;
  /** Date of issue as it is printed, `2026-03-09`; empty leaves the field free. */
  readonly date: string;
  readonly programVersion: string;
  /** Ids of the sheets to issue in their order; those the plan names when left out, else all of them. */
  readonly sheets?: readonly string[] | undefined;
  /** The plan is not as it was issued: the revision is the one an issue would get. */
  readonly draft?: boolean;
  /** The plan of the issue before. What is different is marked with the revision letter. */
  readonly since?: { readonly plan: Plan; readonly revision: string } | undefined;
}

/** Everything the sheets of one set share. */
export interface SetInfo {
  readonly plan: Plan;
  readonly assessment: Assessment;
  readonly options: PaperOptions;
  readonly setupId: string | undefined;
  readonly setupName: string;
  readonly sheet: Sheet;
  readonly units: LengthUnits;
  readonly notices: Notices;
  readonly stopsOpen: number;
  /** Ids of the sheets of this set, in order. */
  readonly sheets: readonly string[];
  /** What changed since the issue before. */
  readonly changes: readonly PlanChange[];
  /** Records that changed since the issue before. */
  readonly changed: ReadonlySet<string>;
}

export const setInfo = (
  plan: Plan,
  assessment: Assessment,
  options: PaperOptions,
  notices: Notices,
  sheets: readonly string[] = options.sheets ?? planRecord(plan).paper.sheets ?? [],
): SetInfo => {
  const settings = planRecord(plan);
  const setup = (options.setupId && recordOf(plan, 'setup', options.setupId)) || setupsOf(plan)[0];
  const wanted = sheetOf(settings.paper.sheet, settings.paper.landscape);
  const fallback = sheetOf(settings.lengthUnits === 'imperial' ? 'ANSI B' : 'A3', true);
  const sheet = wanted ?? fallback;
  if (!sheet) throw new Error('the sheet table has lost its rows');
  if (!wanted)
    notices.say(
      `There is no sheet “${settings.paper.sheet}” in the table of sheets; the papers are laid out on ${sheet.text}.`,
    );
  const changes = options.since ? planChanges(options.since.plan, plan) : [];
  return {
    plan,
    assessment,
    options,
    setupId: setup?.id,
    setupName: setup?.name ?? '',
    sheet,
    units: settings.lengthUnits,
    notices,
    // A person's note that a stop is known does not close it.
    stopsOpen: assessment.findings.filter((f) => f.severity === 'stop').length,
    sheets,
    changes,
    changed: new Set(changes.filter((c) => c.what !== 'removed').flatMap((c) => c.recordIds)),
  };
};

/** A page before its number in the set is known. */
export interface PageMaker {
  (sheetNumber: number, sheetCount: number): Page;
  /** Work that takes long, in steps: gone through before the page is made, so that a person can stop it half-way. */
  readonly prepare?: (sheetNumber: number) => Iterable<void>;
}

/** The pages of a kind of sheet, planned in steps. */
export type Making = Generator<undefined, readonly PageMaker[], undefined>;

export interface SheetTitle {
  readonly title: string;
  readonly subtitle: string;
  readonly documentType: string;
  readonly scale: string;
  readonly units: string;
  /** The title block as a strip along the foot, where the frame is wide enough for it. */
  readonly strip?: boolean;
}

/** Letter of lighting sheets: E-1, E-2 … */
export const sheetName = (n: number): string => `E-${n}`;

/** A page with frame and title block; `draw` fills the frame above and beside the block. */
export const framedPage =
  (info: SetInfo, title: SheetTitle, draw: (ink: Ink, frame: Rect) => void): PageMaker =>
  (sheetNumber, sheetCount) => {
    const ink = makeInk(info.notices);
    const strip = title.strip === true && frameOf(info.sheet).w >= LEAST_STRIP_MM;
    const frame = drawFrame(ink, info.sheet, strip);
    draw(ink, frame);
    const fields: TitleFields = {
      ...title,
      settings: planRecord(info.plan),
      setupName: info.setupName,
      paper: info.sheet.text,
      sheetName: sheetName(sheetNumber),
      sheetNumber,
      sheetCount,
      revision: info.options.revision,
      draft: info.options.draft ?? false,
      date: info.options.date,
      stopsOpen: info.stopsOpen,
      program: info.options.programVersion,
    };
    if (strip) drawTitleStrip(ink, frame, fields);
    else drawTitleBlock(ink, frame, fields);
    return {
      title: `${sheetName(sheetNumber)} ${title.title}`,
      widthMm: info.sheet.widthMm,
      heightMm: info.sheet.heightMm,
      items: ink.items,
    };
  };

/** Printed on every page that gives electrical figures. */
export const CAUTION =
  'A planning aid, not an electrical design. Local electrical codes and the authority having jurisdiction come first, then each ' +
  "maker's instructions. Source, feeder, grounding and house-panel work is for qualified persons only.";
