import { cablesInCrossings, rampPieces } from '../derive/crossings.ts';
import { overheadLimit } from '../derive/overhead.ts';
import { formatLength } from '../kernel/units.ts';
import { photosOfNote, photosOn } from '../plan/edits/photos.ts';
import { planRecord, recordOf, recordsOf } from '../plan/plan.ts';
import type { Blob, Photo } from '../plan/records/index.ts';
import { cell } from './figures.ts';
import { type Block, flowArea, flowPages, type Section } from './flow.ts';
import type { PageMaker, SetInfo } from './sheet-info.ts';
import { type Column, headingBlock, placeColumns, stacked, tableHead, tableRow } from './table.ts';

const NOTES: readonly Column[] = [
  { id: 'name', head: 'Note', leastMm: 34, grow: 1 },
  { id: 'says', head: 'Says', leastMm: 80, grow: 4 },
  { id: 'floor', head: 'Floor', leastMm: 22, grow: 1 },
  { id: 'photos', head: 'Photos', leastMm: 22 },
];
const CROSSINGS: readonly Column[] = [
  { id: 'how', head: 'Crossing', leastMm: 40, grow: 2 },
  { id: 'floor', head: 'Floor', leastMm: 22, grow: 1 },
  { id: 'length', head: 'Length', leastMm: 20, align: 'right' },
  { id: 'height', head: 'Lowest cable', leastMm: 24, align: 'right' },
  { id: 'cables', head: 'Cables', leastMm: 16, align: 'right' },
  { id: 'pieces', head: 'Ramp pieces', leastMm: 22, align: 'right' },
];
const WAYS: readonly Column[] = [
  { id: 'what', head: 'To keep clear of', leastMm: 40, grow: 2 },
  { id: 'floor', head: 'Floor', leastMm: 22, grow: 1 },
  { id: 'height', head: 'Lowest wire', leastMm: 24, align: 'right' },
  { id: 'volts', head: 'Volts', leastMm: 24, align: 'right' },
  { id: 'keep', head: 'Distance to keep', leastMm: 30, align: 'right' },
  { id: 'source', head: 'From', leastMm: 60, grow: 3, note: true },
];

/** Photos beside one another, and how large one prints. */
const PHOTOS_ACROSS = 3;
const PHOTO_HEIGHT_MM = 46;
const CAPTION_MM = 9;

const photoRow = (info: SetInfo, photos: readonly Photo[], widthMm: number): Block => ({
  heightMm: PHOTO_HEIGHT_MM + CAPTION_MM,
  draw: (ink, area) => {
    const each = widthMm / PHOTOS_ACROSS;
    photos.forEach((p, i) => {
      const x = area.x + i * each;
      const blob: Blob | undefined = recordOf(info.plan, 'blob', p.blobId);
      const k = Math.min((each - 4) / p.widthPx, (PHOTO_HEIGHT_MM - 2) / p.heightPx);
      const [w, h] = [p.widthPx * k, p.heightPx * k];
      if (blob && (blob.mediaType === 'image/png' || blob.mediaType === 'image/jpeg'))
        ink.add([
          {
            kind: 'image',
            blobId: blob.id,
            mediaType: blob.mediaType,
            base64: blob.base64,
            xMm: x,
            yMm: area.y + 1,
            rotationDeg: 0,
            widthMm: w,
            heightMm: h,
            opacity: 1,
          },
        ]);
      else ink.text(x, area.y + 8, 'its picture is not in the plan');
      ink.text(x, area.y + PHOTO_HEIGHT_MM + 3, p.label, { weight: 'semibold' });
      ink.text(x + 10, area.y + PHOTO_HEIGHT_MM + 3, `${p.caption}${floorText(info, p.floorId)}`, {
        maxMm: each - 14,
      });
    });
  },
});

const floorName = (info: SetInfo, id: string): string => recordOf(info.plan, 'floor', id)?.name ?? '';
const floorText = (info: SetInfo, id: string): string =>
  recordsOf(info.plan, 'floor').length > 1 ? ` (${floorName(info, id)})` : '';

const headed =
  (head: string, under: string, more: Block | undefined) =>
  (continued: boolean): Block => {
    const heading = headingBlock(continued ? `${head} (continued)` : head, under);
    return more ? stacked(heading, more) : heading;
  };

const notesSection = (info: SetInfo, w: number): Section => {
  const columns = placeColumns(NOTES, w);
  const notes = recordsOf(info.plan, 'mark').filter((m) => m.what === 'note' && !m.hidden);
  return {
    head: headed('Notes', 'pinned to spots of the plot', tableHead(columns)),
    blocks: notes.map((m) =>
      tableRow(columns, {
        name: { text: m.name, weight: 'semibold' },
        says: m.text ?? m.notes ?? '',
        floor: floorName(info, m.floorId),
        photos: photosOfNote(info.plan, m)
          .map((p) => p.label)
          .join(', '),
      }),
    ),
  };
};

const photosSection = (info: SetInfo, w: number): Section => {
  const photos = photosOn(info.plan).filter((p) => !p.hidden);
  const rows = Array.from({ length: Math.ceil(photos.length / PHOTOS_ACROSS) }, (_, i) =>
    photos.slice(i * PHOTOS_ACROSS, (i + 1) * PHOTOS_ACROSS),
  );
  return {
    head: headed('Photos', 'by the label of their pin on the plot', undefined),
    blocks: rows.map((r) => photoRow(info, r, w)),
  };
};

/** Ramps and flown crossings with the cables they take, and the pieces of ramp in all. */
export const crossingsSection = (info: SetInfo, w: number): Section => {
  const columns = placeColumns(CROSSINGS, w);
  const units = planRecord(info.plan).lengthUnits;
  const taken = cablesInCrossings(info.plan);
  const all = recordsOf(info.plan, 'crossing').map((x) => {
    const cables = taken.get(x.id)?.size ?? 0;
    return { x, cables, pieces: rampPieces(x, cables) };
  });
  const total = all.reduce((s, c) => s + c.pieces, 0);
  return {
    head: headed(
      'Cable crossings',
      'a piece of ramp is taken as 0.9 m long (common practice, no published source)',
      tableHead(columns),
    ),
    blocks: [
      ...all.map(({ x, cables, pieces }) =>
        tableRow(columns, {
          how: x.how === 'ramp' ? `ramp, ${x.channels} channels` : 'flown',
          floor: floorName(info, x.floorId),
          length: formatLength(x.lengthMm, units),
          height: x.how === 'flown' ? (x.heightMm > 0 ? formatLength(x.heightMm, units) : 'not given') : '',
          cables: cell(cables),
          pieces: x.how === 'ramp' ? cell(pieces) : '',
        }),
      ),
      tableRow(
        columns,
        { how: { text: 'All', weight: 'semibold' }, pieces: { text: cell(total), weight: 'semibold' } },
        { rule: 'thin' },
      ),
    ],
  };
};

const waysSection = (info: SetInfo, w: number): Section => {
  const columns = placeColumns(WAYS, w);
  const units = planRecord(info.plan).lengthUnits;
  const ways = recordsOf(info.plan, 'feature').filter(
    (f) => f.what === 'exit' || f.what === 'fire-lane' || f.what === 'power-line',
  );
  return {
    head: headed(
      'To keep clear',
      'the authority having jurisdiction and the owner of the line decide',
      tableHead(columns),
    ),
    blocks: ways.map((f) => {
      const line = f.what === 'power-line' ? overheadLimit(info.plan, f.voltsV) : undefined;
      return tableRow(columns, {
        what: [f.what === 'power-line' ? 'overhead line' : f.what.replace('-', ' '), f.label]
          .filter(Boolean)
          .join(', '),
        floor: floorName(info, f.floorId),
        height: line ? (f.heightMm > 0 ? formatLength(f.heightMm, units) : 'not known') : '',
        volts: line ? (f.voltsV === undefined ? 'not known' : `${f.voltsV / 1000} kV`) : '',
        keep: line ? formatLength(line.needMm, units) : '',
        source: line ? `${line.limit.source}, ${line.limit.edition}` : '',
      });
    }),
  };
};

/** Notes, photos, cable crossings and what stays clear; no sheet where there is none of them. */
export const sitePages = (info: SetInfo): readonly PageMaker[] => {
  const { w } = flowArea(info);
  const sections = [
    notesSection(info, w),
    photosSection(info, w),
    ...(recordsOf(info.plan, 'crossing').length > 0 ? [crossingsSection(info, w)] : []),
    waysSection(info, w),
  ].filter((s) => s.blocks.length > 0);
  if (sections.length === 0) return [];
  return flowPages(
    info,
    {
      title: 'Site notes',
      subtitle: 'Notes, photos, cable crossings, what stays clear',
      documentType: 'List',
      scale: 'none',
      units: planRecord(info.plan).lengthUnits === 'imperial' ? 'ft' : 'm',
    },
    sections,
    [
      'Distances from overhead lines are for asking their owner in time; nothing here is leave to work near one.',
    ],
  );
};
