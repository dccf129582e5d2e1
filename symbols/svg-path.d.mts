type Command = readonly (string | number)[];
export function normalisePath(d: string): Command[];
export function circleToPath(cx: number, cy: number, rx: number, ry: number): Command[];
export function pathBox(commands: readonly (Command | undefined)[]): {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
};
export function pathText(commands: readonly Command[]): string;
