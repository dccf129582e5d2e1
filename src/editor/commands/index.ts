import { arrangeCommands } from './arrange.ts';
import { clearSelection } from './clear-selection.ts';
import { deleteSelection } from './delete.ts';
import { duplicate } from './duplicate.ts';
import { fitAll, fitSelection } from './fit.ts';
import { marks } from './marks.ts';
import { nudges } from './nudge.ts';
import { packCommands } from './packs.ts';
import { plottingCommands } from './plotting.ts';
import { plugIn } from './plug-in.ts';
import { redo } from './redo.ts';
import { registerCommands } from './registry.ts';
import { roomCommands } from './rooms.ts';
import { rotations } from './rotate.ts';
import { scoutCommands } from './scout.ts';
import { selectAll } from './select-all.ts';
import { selectionCommands } from './selection.ts';
import { setupPlaceCommands } from './setup-places.ts';
import { nextSetup, previousSetup } from './setups.ts';
import { stackingCommands } from './stacking.ts';
import { putOnStands, takeOffStands } from './stands.ts';
import { toggleLevel } from './toggle-level.ts';
import { toolCommands } from './tools.ts';
import { undo } from './undo.ts';
import { unplugSelection } from './unplug.ts';
import { zoomIn, zoomOut } from './zoom.ts';

export type { Command, CommandContext } from './command.ts';
export { registerCommands } from './registry.ts';

/** Every command, in the order lists show them. */
export const commands = registerCommands([
  undo,
  redo,
  selectAll,
  clearSelection,
  deleteSelection,
  duplicate,
  ...nudges,
  ...rotations,
  ...marks,
  putOnStands,
  takeOffStands,
  toggleLevel,
  plugIn,
  unplugSelection,
  ...packCommands,
  ...toolCommands,
  ...roomCommands,
  ...scoutCommands,
  ...selectionCommands,
  ...arrangeCommands,
  ...stackingCommands,
  ...plottingCommands,
  zoomIn,
  zoomOut,
  fitAll,
  fitSelection,
  nextSetup,
  previousSetup,
  ...setupPlaceCommands,
]);

/** The command with this id. Throws for one that does not exist. */
export const command = (id: string): (typeof commands)[number] => {
  const c = commands.find((x) => x.id === id);
  if (!c) throw new Error(`no command ${id}`);
  return c;
};
