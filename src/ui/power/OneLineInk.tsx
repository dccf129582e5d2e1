import { useMemo } from 'react';
import { PALETTES } from '../../canvas/palette.ts';
import type { SupplyEntity } from '../../derive/types.ts';
import type { DisplayItem } from '../../drawing/display-list.ts';
import type { FigureZone } from '../../drawing/one-line/index.ts';
import { formatPct } from '../../kernel/units.ts';
import { displayItemSvg } from '../../output/svg.ts';

/** One part of the diagram, to hover and choose. */
export const OneLineItem = ({
  item,
  chosen,
  hit,
  scheme,
}: {
  readonly item: DisplayItem;
  readonly chosen: boolean;
  readonly hit: 'dark' | 'fewer legs' | 'wrong volts' | undefined;
  readonly scheme: 'bench' | 'truck';
}) => {
  const html = useMemo(() => displayItemSvg(item, PALETTES[scheme].roles), [item, scheme]);
  const { minX, minY, maxX, maxY } = item.box;
  // A box's or source's item spans its whole frame: only what is small enough to aim at takes clicks over all its area.
  const small = maxX - minX < 66 && maxY - minY < 60;
  const area = { x: minX - 0.5, y: minY - 0.5, width: maxX - minX + 1, height: maxY - minY + 1 };
  return (
    <g
      data-record={item.recordId}
      data-key={item.key.split('#')[0]}
      data-fold={item.key.endsWith('#fold') ? item.recordId : undefined}
      className={`one-line-item${chosen ? ' chosen' : ''}${hit && small ? ` hit ${hit.replace(' ', '-')}` : ''}`}
    >
      {hit ? <title>{`While tried: ${hit}`}</title> : null}
      {small ? <rect className="one-line-back" {...area} /> : null}
      {/* biome-ignore lint/security/noDangerouslySetInnerHtml: our own writer escapes every text */}
      <g dangerouslySetInnerHTML={{ __html: html }} />
      {small ? <rect className="one-line-hit" {...area} /> : null}
    </g>
  );
};

/** Places of the figures, over all else: choosing one opens its working. */
export const FigureZones = ({
  figures,
  picked,
}: {
  readonly figures: readonly FigureZone[];
  readonly picked: FigureZone | undefined;
}) => (
  <g>
    {figures.map((f) => (
      <rect
        key={`${f.key} ${f.box.minX} ${f.box.minY}`}
        className={f === picked ? 'one-line-figure picked' : 'one-line-figure'}
        data-figure={f.key}
        data-record={f.recordId}
        data-key={f.entityKey}
        x={f.box.minX}
        y={f.box.minY}
        width={f.box.maxX - f.box.minX}
        height={f.box.maxY - f.box.minY}
      >
        <title>{`${f.text}: show the working`}</title>
      </rect>
    ))}
  </g>
);

const LABEL_PX = 13;

/** Names of sources and boxes at a size that can be read, for when the diagram is too small to read its own texts. */
export const FarLabels = ({
  items,
  entities,
  percentOf,
  k,
}: {
  readonly items: readonly DisplayItem[];
  readonly entities: ReadonlyMap<string, SupplyEntity>;
  /** Per cent of the limit in the worst setup; NaN where it is not computed. */
  readonly percentOf: (e: SupplyEntity) => number;
  readonly k: number;
}) => {
  const mm = LABEL_PX / k;
  return (
    <g className="one-line-far">
      {items.map((i) => {
        const e = entities.get(i.key.replace(/#head$/, ''));
        if (
          !e ||
          (e.what !== 'box' && e.what !== 'source') ||
          (e.what === 'source' && !i.key.endsWith('#head'))
        )
          return null;
        const pct = percentOf(e);
        const widthOf = (text: string): number => text.length * mm * 0.54 + mm * 0.6;
        const full = Number.isFinite(pct) ? `${e.label} · ${formatPct(pct)}` : e.label;
        // No wider than the frame it names: the next one may begin there.
        const words = e.what === 'source' || widthOf(full) <= i.box.maxX - i.box.minX ? full : e.label;
        const width = widthOf(words);
        return (
          <g key={i.key} data-record={i.recordId} data-key={e.key} className={pct > 100 ? 'over' : undefined}>
            <rect x={i.box.minX} y={i.box.minY} width={width} height={mm * 1.5} />
            <text x={i.box.minX + mm * 0.3} y={i.box.minY + mm * 1.1} fontSize={mm}>
              {words}
            </text>
          </g>
        );
      })}
    </g>
  );
};
