import { type RefObject, useLayoutEffect, useRef, useState } from 'react';

export interface Size {
  readonly width: number;
  readonly height: number;
}

/** Size of an element in pixels, so that a drawing is drawn at the size it is shown in and its text is never scaled. */
export function useSize<E extends Element>(): readonly [RefObject<E | null>, Size | null] {
  const ref = useRef<E>(null);
  const [size, setSize] = useState<Size | null>(null);
  useLayoutEffect(() => {
    const element = ref.current;
    if (!element) return;
    const measure = (): void => {
      const { width, height } = element.getBoundingClientRect();
      setSize((before) =>
        before && before.width === Math.round(width) && before.height === Math.round(height)
          ? before
          : { width: Math.round(width), height: Math.round(height) },
      );
    };
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  return [ref, size];
}
