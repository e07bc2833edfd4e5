import { memo } from 'react';
import { useSize } from '../use-size.ts';
import { words } from '../words.ts';
import type { AreaDrawing, Units } from '../worker/api.ts';
import { Dimensions, ScaleBar } from './dimensions.tsx';
import { EmptyFloor } from './empty-floor.tsx';
import { extentOf, frameFor } from './geometry.ts';
import { Below, Beside, LABEL_COLUMN, LABEL_GAP, Title } from './labels.tsx';
import type { FloorLayer } from './layer.ts';
import { Marks } from './marks.tsx';
import { Slab } from './slab.tsx';

const MOST_LABELS = 5;

interface FloorProps {
  readonly area: AreaDrawing | null;
  readonly layer: FloorLayer | null;
  readonly units: Units;
  /** The small drawing of the strip: no labels, no dimensions. */
  readonly small?: boolean;
}

/** The floor to scale, drawn at the pixel size it is shown in. */
export const Floor = memo(function Floor(props: FloorProps) {
  const [ref, size] = useSize<HTMLDivElement>();
  return (
    <div className="drawing" ref={ref}>
      {size && size.width > 20 && size.height > 20 ? <Drawing {...props} {...size} /> : null}
    </div>
  );
});

type DrawingProps = FloorProps & { readonly width: number; readonly height: number };

function Drawing({ area: looked, layer, units, small = false, width, height }: DrawingProps) {
  const area = layer?.area ?? looked;
  const extent = area ? extentOf(area.outline) : null;
  if (!area || !extent) return <EmptyFloor width={width} height={height} small={small} />;
  const labels = small ? [] : (layer?.labels ?? []).slice(0, MOST_LABELS);
  // A narrow sheet has no room for a column: labels go under the drawing.
  const beside = labels.length > 0 && width >= 460;
  const below = labels.length > 0 && !beside ? labels.length * LABEL_GAP + 12 : 0;
  const room = small
    ? { left: 12, top: 12, right: 12, bottom: 12 }
    : { left: 72, top: beside ? 58 : 92, right: beside ? LABEL_COLUMN + 40 : 40, bottom: 58 + below };
  const frame = { ...frameFor(extent, width, height, room), small };
  return (
    <svg
      width={width}
      height={height}
      viewBox={`0 0 ${width} ${height}`}
      role="img"
      aria-label={words.floor.label(area.name)}
    >
      <Slab area={area} frame={frame} small={small} />
      {layer?.under?.(frame)}
      {layer?.bare ? null : <Marks area={area} frame={frame} small={small} />}
      {layer?.over?.(frame)}
      {small ? null : (
        <>
          <Dimensions area={area} frame={frame} />
          <ScaleBar frame={frame} units={units} left={beside ? width - LABEL_COLUMN : null} y={height - 26} />
          <Title layer={layer} x={beside ? width - LABEL_COLUMN : 16} />
          {beside ? <Beside labels={labels} frame={frame} /> : <Below labels={labels} frame={frame} />}
        </>
      )}
    </svg>
  );
}

export type { FloorLabel, FloorLayer } from './layer.ts';
export { Marks } from './marks.tsx';
export { Slab } from './slab.tsx';
