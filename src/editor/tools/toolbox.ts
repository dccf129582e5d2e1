import type { Session, ToolId } from '../session.ts';
import { createAimTool } from './aim.ts';
import { createCableTool } from './cable.ts';
import { createCrossingTool } from './crossing.ts';
import { createFeatureTool } from './feature.ts';
import { createLineTool } from './line.ts';
import { createMeasureTool } from './measure.ts';
import { createOpeningTool } from './opening.ts';
import { createOutletTool } from './outlet.ts';
import { createPanTool } from './pan.ts';
import { createPlaceTool } from './place.ts';
import { createScaleTool } from './scale.ts';
import { createSelectTool } from './select.ts';
import type { PointerInfo, Tool, ToolContext } from './tool.ts';
import { createWallTool } from './wall.ts';

/** The tools, with pointer and keys led to the one in use. */
export interface Toolbox {
  pointerDown(e: PointerInfo): void;
  pointerMove(e: PointerInfo): void;
  pointerUp(e: PointerInfo): void;
  /** Ends the gesture at work without an edit. */
  cancel(): void;
  /** A key by its name. Says whether the tool in use took it. */
  key(key: string): boolean;
  /** Whether the tool in use takes typed text, the space bar included. */
  typing(): boolean;
  /** Lends the pointer to moving the view, until `undefined` gives it back. */
  lend(tool: 'pan' | undefined): void;
  cursor(): string;
  /** Stops following the session. */
  close(): void;
}

const makeTools = (): Readonly<Record<ToolId, Tool>> => ({
  select: createSelectTool(),
  place: createPlaceTool(),
  cable: createCableTool(),
  line: createLineTool(),
  aim: createAimTool(),
  pan: createPanTool(),
  wall: createWallTool(),
  opening: createOpeningTool(),
  outlet: createOutletTool(),
  measure: createMeasureTool(),
  scale: createScaleTool(),
  feature: createFeatureTool(),
  crossing: createCrossingTool(),
});

/** Makes the tools over a session. A change of tool ends what the last one had begun and says what the new one waits for. */
export const createToolbox = (ctx: ToolContext): Toolbox => {
  const tools = makeTools();
  const { session }: { session: Session } = ctx;
  let lent: 'pan' | undefined;
  const current = (): Tool => tools[lent ?? session.getState().tool];
  const stop = session.subscribe((now, was) => {
    if (now.tool !== was.tool) {
      tools[was.tool].onPointerCancel(ctx);
      session.set({ message: tools[now.tool].hint });
    } else if (now.plan !== was.plan && now.placing !== was.placing) {
      tools[now.tool].onPointerCancel(ctx);
    }
  });
  return {
    pointerDown: (e) => current().onPointerDown(ctx, e),
    pointerMove: (e) => current().onPointerMove(ctx, e),
    pointerUp: (e) => current().onPointerUp(ctx, e),
    cancel: () => current().onPointerCancel(ctx),
    key: (key) => {
      const tool = current();
      if (tool.onKey(ctx, key)) return true;
      if (key !== 'Escape' || tool.id === 'select') return false;
      session.set({ tool: 'select', placing: undefined, message: '' });
      return true;
    },
    typing: () => current().typing?.() ?? false,
    lend: (tool) => {
      lent = tool;
    },
    cursor: () => current().cursor(ctx),
    close: stop,
  };
};
