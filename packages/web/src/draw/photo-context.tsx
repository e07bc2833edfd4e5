import { createContext, type ReactNode, useCallback, useContext, useEffect, useMemo, useState } from 'react';
import { textAt } from '../edit/path.ts';
import { useJob } from '../job/job-context.tsx';
import type { Dot } from '../worker/api.ts';
import { useDraw } from './draw-context.tsx';
import { type Homography, homography, scaled } from './homography.ts';
import { metres } from './lengths.ts';
import { type KeptPhoto, keepPhoto, keptPhoto } from './photo-keep.ts';

export interface Photo extends KeptPhoto {
  readonly address: string;
  readonly width: number;
  readonly height: number;
}

export type PhotoTrouble = 'not a picture' | 'not kept' | null;

interface Tracing {
  readonly photo: Photo | null;
  /** From pixels of the picture to metres of the floor; null until it is set to scale. */
  readonly map: Homography | null;
  readonly trouble: PhotoTrouble;
  choose(file: File): Promise<void>;
  set(change: Partial<Pick<KeptPhoto, 'marks' | 'typed' | 'way'>>): void;
  drop(): void;
}

const Context = createContext<Tracing | null>(null);

export function useTracing(): Tracing {
  const tracing = useContext(Context);
  if (!tracing) throw new Error('useTracing stands outside a drawing');
  return tracing;
}

export function mapOf({ way, marks, typed }: Pick<KeptPhoto, 'way' | 'marks' | 'typed'>): Homography | null {
  if (way === 'length') {
    const [a, b] = marks;
    const length = metres(typed[0]);
    return a && b && length !== null ? scaled([a, b], length) : null;
  }
  const floor = [0, 1, 2, 3].map((i) => [metres(typed[2 * i]), metres(typed[2 * i + 1])] as const);
  if (marks.length !== 4 || floor.some(([x, y]) => x === null || y === null)) return null;
  return homography(marks, floor as unknown as readonly Dot[]);
}

async function sized(kept: KeptPhoto): Promise<Photo | null> {
  try {
    const bitmap = await createImageBitmap(kept.picture);
    const { width, height } = bitmap;
    bitmap.close();
    return { ...kept, address: URL.createObjectURL(kept.picture), width, height };
  } catch {
    // The browser cannot read it as a picture; the person is told and chooses another.
    return null;
  }
}

/** The picture under the drawing of the room looked at. */
export function TracingProvider({ children }: { readonly children: ReactNode }) {
  const { id } = useJob();
  const { area } = useDraw();
  const key = `${id}/${textAt(area, ['id'])}`;
  const [photo, setPhoto] = useState<Photo | null>(null);
  const [trouble, setTrouble] = useState<PhotoTrouble>(null);
  useEffect(() => {
    let left = false;
    void keptPhoto(key)
      .then((kept) => (kept ? sized(kept) : null))
      .then((found) => {
        if (!left) setPhoto(found);
      });
    return () => {
      left = true;
      setPhoto(null);
    };
  }, [key]);
  const address = photo?.address;
  useEffect(() => (address ? () => URL.revokeObjectURL(address) : undefined), [address]);
  const keep = useCallback(
    async (kept: KeptPhoto | null): Promise<void> => {
      const lasting = await keepPhoto(key, kept);
      setTrouble(lasting || !kept ? null : 'not kept');
    },
    [key],
  );
  const value: Tracing = {
    photo,
    map: useMemo(() => (photo ? mapOf(photo) : null), [photo]),
    trouble,
    async choose(file) {
      const kept: KeptPhoto = { picture: file, name: file.name, marks: [], typed: [], way: 'length' };
      const found = await sized(kept);
      if (!found) {
        setTrouble('not a picture');
        return;
      }
      setPhoto(found);
      await keep(kept);
    },
    set(change) {
      if (!photo) return;
      const next = { ...photo, ...change };
      setPhoto(next);
      const { picture, name, marks, typed, way } = next;
      void keep({ picture, name, marks, typed, way });
    },
    drop() {
      setPhoto(null);
      void keep(null);
    },
  };
  return <Context value={value}>{children}</Context>;
}
