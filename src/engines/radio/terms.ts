import { limitCitation, limitOf } from '../../derive/limits.ts';
import type { Id } from '../../kernel/ids.ts';
import { betweenFloors, crowdDb, distanceParts, type Ground, patternLossDb, wifiOf } from './budget.ts';
import { aerialOf, floorLoss, patternSource } from './materials.ts';
import { type Hit, hitsOn } from './path.ts';
import type { Listener, Sender, Term } from './types.ts';
import { wifiSource } from './wifi.ts';

const barrierTerm = (h: Hit, label: (id: Id) => string): Term => {
  const { barrier: b } = h;
  const over = Number.isFinite(h.overDb) && h.overDb < h.throughDb;
  const what = h.hole ? h.hole.name : b.what === 'wall' ? `wall, ${b.name}` : `${label(b.id)}, ${b.name}`;
  return {
    id: over ? 'over' : h.hole ? 'opening' : b.what,
    name: over ? `over the top: ${what}` : what,
    db: -h.db,
    from: over ? 'knife edge, ITU-R P.526' : (h.hole?.source ?? b.source),
    assumed: b.assumed,
    recordId: h.hole?.id ?? b.id,
  };
};

/** The sum of one hop, term by term; the terms add up to `hopMarginDb`. */
export const hopTerms = (g: Ground, s: Sender, l: Listener, label: (id: Id) => string): readonly Term[] => {
  const between = betweenFloors(g, s.floorId, l.floorId);
  const { floors } = between;
  if (!floors) return [];
  const part = distanceParts(g, between, s, l);
  const level = Math.min(s.spot.z - s.heightM, l.spot.z - l.heightM);
  const cite = (id: string): string => limitCitation(limitOf(g.plan, id));
  const floorCost = floorLoss(floors.count, g.scene.fMhz);
  const crowd = crowdDb(g, level, s.spot, l.spot);
  const pattern = patternLossDb(s.antenna, s.facingDeg, s.spot, l.spot);
  const wifi = wifiOf(g.air, s);
  const shape = aerialOf(s.antenna);
  const given = g.air.coefficient !== undefined;
  const terms: (Term | undefined)[] = [
    { id: 'eirp', name: 'radiated power', db: s.eirpDbm, from: s.eirpFrom, assumed: s.eirpAssumed },
    pattern > 0
      ? {
          id: 'pattern',
          name: `beside the aerial’s best direction (${shape?.name ?? s.antenna})`,
          db: -pattern,
          from: `${patternSource}. ${shape?.source ?? ''}`,
          assumed: true,
        }
      : undefined,
    {
      id: 'free',
      name: `free space, ${part.d.toFixed(1)} m at ${Math.round(g.scene.fMhz)} MHz`,
      db: -part.freeDb,
      from: 'ITU-R P.525',
      assumed: false,
    },
    part.lawDb > 0
      ? {
          id: 'indoors',
          name: `indoors, beyond free space (${between.coefficient} dB per decade)`,
          db: -part.lawDb,
          from: given ? 'plan' : cite('radio-distance-indoors'),
          assumed: !given,
        }
      : undefined,
    part.groundDb > 0
      ? {
          id: 'ground',
          name: 'flat ground, beyond its break point',
          db: -part.groundDb,
          from: 'two-ray ground reflection, 40 · log d − 20 · log(h1 · h2)',
          assumed: false,
        }
      : undefined,
    ...hitsOn(g.scene, s.spot, l.spot, floors.ids).map((h) => barrierTerm(h, label)),
    floorCost.db > 0
      ? { id: 'floors', name: floorCost.name, db: -floorCost.db, from: floorCost.from, assumed: true }
      : undefined,
    crowd > 0
      ? {
          id: 'crowd',
          name: g.air.crowd === 'few' ? 'people, few' : 'people, many',
          db: -crowd,
          from: `knife edge at head height, ITU-R P.526; at most by ${cite(`radio-crowd-${g.air.crowd}-max`)}`,
          assumed: g.air.crowdAssumed,
        }
      : undefined,
    { id: 'gain', name: 'receiving aerial', db: l.gainDbi, from: l.from, assumed: l.assumed },
    {
      id: 'reserve',
      name: 'aerials not turned alike',
      db: -g.reserveDb,
      from: cite('radio-reserve'),
      assumed: true,
    },
    wifi.db > 0
      ? {
          id: 'wifi',
          name: `Wi-Fi on ${g.air.wifiChannels.join(', ')}: ${Math.round(wifi.share * 100)} % of the band is free`,
          db: -wifi.db,
          from: wifiSource,
          assumed: g.air.wifiAssumed,
        }
      : undefined,
    {
      id: 'sensitivity',
      name: `receiver needs ${String(l.sensitivityDbm).replace('-', '−')} dBm`,
      db: -l.sensitivityDbm,
      from: l.from,
      assumed: l.assumed,
    },
  ];
  return terms.filter((t): t is Term => t !== undefined);
};
