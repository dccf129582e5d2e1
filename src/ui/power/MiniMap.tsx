import type { DisplayItem } from '../../drawing/display-list.ts';
import type { Size, View } from './one-line-view.ts';

const WIDTH_PX = 240;
const MOST_HEIGHT_PX = 110;

/** The whole diagram small, with what is in sight; choosing a spot goes there. Only a help for the pointer: keys pan as well. */
export const MiniMap = ({
  items,
  sheet,
  frame,
  view,
  onView,
}: {
  readonly items: readonly DisplayItem[];
  readonly sheet: Size;
  readonly frame: Size;
  readonly view: View;
  readonly onView: (v: View) => void;
}) => {
  const k = Math.min(WIDTH_PX / sheet.width, MOST_HEIGHT_PX / sheet.height);
  const [w, h] = [sheet.width * k, sheet.height * k];
  const left = Math.max(0, -view.x / view.k);
  const top = Math.max(0, -view.y / view.k);
  const right = Math.min(sheet.width, (frame.width - view.x) / view.k);
  const bottom = Math.min(sheet.height, (frame.height - view.y) / view.k);
  // Nothing to find where all of it is in sight.
  if (left <= 0 && top <= 0 && right >= sheet.width - 0.5 && bottom >= sheet.height - 0.5) return null;
  const goTo = (e: React.PointerEvent<SVGSVGElement>): void => {
    const box = e.currentTarget.getBoundingClientRect();
    const [x, y] = [(e.clientX - box.x) / k, (e.clientY - box.y) / k];
    onView({ ...view, x: frame.width / 2 - x * view.k, y: frame.height / 2 - y * view.k });
  };
  return (
    <svg
      className="mini-map"
      width={w}
      height={h}
      viewBox={`0 0 ${sheet.width} ${sheet.height}`}
      aria-hidden="true"
      onPointerDown={(e) => {
        e.stopPropagation();
        e.currentTarget.setPointerCapture(e.pointerId);
        goTo(e);
      }}
      onPointerMove={(e) => {
        if (e.buttons !== 0) goTo(e);
      }}
    >
      {items.map((i) => (
        <rect
          key={i.key}
          className={i.key.includes('#') ? 'mini-part' : 'mini-item'}
          x={i.box.minX}
          y={i.box.minY}
          width={Math.max(0.5, i.box.maxX - i.box.minX)}
          height={Math.max(0.5, i.box.maxY - i.box.minY)}
        />
      ))}
      <rect
        className="mini-view"
        x={left}
        y={top}
        width={Math.max(1, right - left)}
        height={Math.max(1, bottom - top)}
      />
    </svg>
  );
};
