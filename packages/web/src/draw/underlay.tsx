import { useEffect, useRef } from 'react';
import type { Extent, FloorFrame } from '../floor/geometry.ts';
import { after, cssMatrix, type Homography } from './homography.ts';
import { useTracing } from './photo-context.tsx';

/** From metres to the pixels of the drawing, as a map that composes with that of the picture. */
const frameMap = (frame: FloorFrame, { least, most }: Extent): Homography => {
  const s = frame.scale;
  return [s, 0, frame.left - least[0] * s, 0, -s, frame.top + most[1] * s, 0, 0, 1];
};

/** The picture under the drawing, straightened and to scale. */
export function Underlay({ frame, extent }: { readonly frame: FloorFrame; readonly extent: Extent }) {
  const { photo, map } = useTracing();
  const picture = useRef<HTMLImageElement>(null);
  const matrix = map ? cssMatrix(after(frameMap(frame, extent), map)) : '';
  useEffect(() => {
    if (picture.current) picture.current.style.transform = matrix;
  }, [matrix]);
  if (!photo || !map) return null;
  return (
    <img ref={picture} className="underlay" src={photo.address} width={photo.width} height={photo.height} alt="" />
  );
}
