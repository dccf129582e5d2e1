import type { Id } from '../kernel/ids.ts';
import { recordName } from './names.ts';
import { kindOf, type Plan, recordOf } from './plan.ts';
import { boxFamilies, inletsOf, isFeeder, outletsOf, waysOf } from './ports.ts';
import type { AnyRecord, RecordType } from './records/index.ts';

/** A reference that leads nowhere, or to the wrong sort of thing, in the user's words. */
export interface ReferenceProblem {
  readonly recordId: Id;
  /** The field that holds the reference, like `support.standId`. */
  readonly field: string;
  readonly what: string;
  readonly todo: string;
}

/** All broken references of a plan, in record order. An empty list means every reference resolves. */
export const referenceProblems = (plan: Plan): readonly ReferenceProblem[] => {
  const found: ReferenceProblem[] = [];
  for (const r of plan.records.values()) found.push(...problemsOf(plan, r));
  return found;
};

/** The broken references of one record. */
export const problemsOf = (plan: Plan, r: AnyRecord): readonly ReferenceProblem[] => {
  const problems: ReferenceProblem[] = [];
  const report = (field: string, what: string, todo: string): void => {
    problems.push({ recordId: r.id, field, what: `${recordName(plan, r)}: ${what}`, todo });
  };
  const needs = (field: string, type: RecordType, id: Id, words: string): boolean => {
    if (recordOf(plan, type, id)) return true;
    report(field, `its ${words} is not in the plan`, `Choose another ${words} or remove it.`);
    return false;
  };

  if ('floorId' in r && typeof r.floorId === 'string') needs('floorId', 'floor', r.floorId, 'floor');
  switch (r.type) {
    case 'opening':
      needs('wallId', 'wall', r.wallId, 'wall');
      break;
    case 'fixture':
    case 'ballast':
    case 'stand':
    case 'grip':
    case 'rigging':
    case 'source':
    case 'box':
    case 'cable':
      if (!kindOf(plan, r.kindId, ...(r.type === 'box' ? boxFamilies : [r.type]))) {
        report('kindId', `its kind is not in the plan`, 'Replace it by a kind from the gear book.');
      }
      break;
    case 'outlet':
      if (
        needs('sourceId', 'source', r.sourceId, 'source') &&
        !waysOf(plan, r.sourceId).some((w) => w.id === r.wayId)
      ) {
        report('wayId', 'its circuit is not on the source', 'Choose one of the circuits of the source.');
      }
      break;
    case 'setPiece':
    case 'mark':
      if (r.kindId !== undefined && !kindOf(plan, r.kindId, 'camera', 'furniture', 'vehicle'))
        report('kindId', 'its kind is not in the plan', 'Take another from the gear book or remove it.');
      break;
    case 'measurement':
      if (!plan.records.has(r.on.recordId))
        report('on', 'what was measured is not in the plan any more', 'Remove the measurement.');
      break;
    case 'otherLoad': {
      const { recordId, wayId, portId } = r.on;
      const there =
        wayId !== undefined
          ? waysOf(plan, recordId).some((w) => w.id === wayId)
          : portId !== undefined
            ? outletsOf(plan, recordId).some((o) => o.id === portId)
            : isFeeder(plan, recordId);
      if (!there)
        report(
          'on',
          'what it is plugged into is not in the plan',
          'Plug it into another outlet or remove it.',
        );
      break;
    }
    case 'charger':
      if (!kindOf(plan, r.kindId, 'charger'))
        report('kindId', 'its kind is not in the plan', 'Choose a charger from the gear book.');
      break;
    case 'pack':
      if (!kindOf(plan, r.kindId, 'pack'))
        report('kindId', 'its kind is not in the plan', 'Choose a pack from the gear book.');
      break;
    case 'stock':
      if (!kindOf(plan, r.kindId, 'pack', 'fixture'))
        report('kindId', 'its kind of pack is not in the plan', 'Choose a pack from the gear book.');
      break;
    case 'device':
      if (!kindOf(plan, r.kindId, 'transmitter', 'receiver', 'repeater', 'node', 'dataSplitter', 'video'))
        report('kindId', 'its kind is not in the plan', 'Choose control gear from the gear book.');
      if (r.standId !== undefined) needs('standId', 'stand', r.standId, 'stand');
      if (r.fixtureId !== undefined) needs('fixtureId', 'fixture', r.fixtureId, 'unit');
      if (r.listensToId !== undefined) needs('listensToId', 'device', r.listensToId, 'transmitter');
      for (const p of r.ports) needs('ports', 'universe', p.universeId, 'universe');
      break;
    case 'line':
      if (!plan.records.has(r.from.recordId))
        report('from', 'what it starts from is not in the plan', 'Start it from another port or remove it.');
      for (const id of r.stops)
        if (!['fixture', 'device', 'box'].includes(plan.records.get(id)?.type ?? ''))
          report('stops', 'one of its stops is not in the plan', 'Take the stop out of the line.');
      if (r.kindId !== undefined && !kindOf(plan, r.kindId, 'dataCable'))
        report('kindId', 'its cable is not in the plan', 'Choose a data cable from the gear book.');
      break;
    case 'tick':
      needs('fixtureId', 'fixture', r.fixtureId, 'unit');
      break;
    case 'underlay':
    case 'photo':
      needs('blobId', 'blob', r.blobId, 'picture');
      break;
    case 'labelPlace':
    case 'move':
      if (!plan.records.has(r.recordId))
        report('recordId', 'what it is for is not in the plan', 'Remove it.');
      if (r.type === 'move') needs('setupId', 'setup', r.setupId, 'setup');
      break;
    case 'block':
      for (const id of r.burnsThrough) needs('burnsThrough', 'fixture', id, 'unit');
      break;
    case 'level':
      needs('setupId', 'setup', r.setupId, 'setup');
      needs('fixtureId', 'fixture', r.fixtureId, 'unit');
      break;
    default:
      break;
  }
  if (r.type === 'fixture') {
    if (r.aim.at === 'mark') needs('aim.markId', 'mark', r.aim.markId, 'mark');
    if (r.support.on === 'stand') needs('support.standId', 'stand', r.support.standId, 'stand');
    if (r.support.on === 'rigged' && r.support.riggingId !== undefined)
      needs('support.riggingId', 'rigging', r.support.riggingId, 'support');
    for (const id of r.accessories ?? [])
      if (!kindOf(plan, id, 'rigging', 'grip'))
        report('accessories', 'one of its accessories is not in the plan', 'Take it off or choose another.');
    if (r.patch) {
      needs('patch.universeId', 'universe', r.patch.universeId, 'universe');
      const modes = kindOf(plan, r.kindId, 'fixture')?.modes ?? [];
      if (!modes.some((m) => m.id === r.patch?.modeId)) {
        report(
          'patch.modeId',
          'its mode is not among the modes of its kind',
          'Choose one of the modes of its kind.',
        );
      }
    }
  }
  if (r.type === 'box' && r.patch) needs('patch.universeId', 'universe', r.patch.universeId, 'universe');
  if (r.type === 'fixture' && r.packFrom) needs('packFrom.packId', 'pack', r.packFrom.packId, 'pack');
  if (r.type === 'grip') {
    for (const id of r.supports) needs('supports', 'stand', id, 'stand');
    if (r.riggingId !== undefined) needs('riggingId', 'rigging', r.riggingId, 'support');
    if (r.clothId !== undefined && !kindOf(plan, r.clothId, 'grip'))
      report('clothId', 'its cloth is not in the plan', 'Choose another cloth or take it out.');
  }
  if (r.type === 'box' && r.plugsInto) {
    const { recordId, portId } = r.plugsInto;
    if (!outletsOf(plan, recordId).some((o) => o.id === portId))
      report(
        'plugsInto',
        'the outlet it is plugged into is not in the plan',
        'Plug it into another outlet or feed it by a cable.',
      );
  }
  if (r.type === 'ballast') needs('fixtureId', 'fixture', r.fixtureId, 'unit');
  if (r.type === 'cable') {
    if (!outletsOf(plan, r.from.recordId).some((o) => o.id === r.from.portId)) {
      report(
        'from',
        'the outlet it starts from is not in the plan',
        'Plug it into another outlet or remove it.',
      );
    }
    if (!inletsOf(plan, r.to.recordId).some((i) => i.id === r.to.portId)) {
      report('to', 'the inlet it feeds is not in the plan', 'Lead it to another unit or box or remove it.');
    }
  }
  return problems;
};
