'use client';

import { useEffect, useRef, useState, type ReactNode, type Ref } from 'react';

interface WhenNearProps {
  /** Height kept free until then, px, so that nothing jumps. */
  readonly leastHeight: number;
  /** How far from the window it counts as come, as a CSS margin; default not at all. */
  readonly ahead?: string;
  readonly children: ReactNode;
}

/** Shows what is in it, and loads its scripts, once its place has come into the window. */
export function WhenNear({ leastHeight, ahead = '0px', children }: WhenNearProps) {
  const place = useRef<HTMLDivElement>(null);
  const [isNear, setNear] = useState(false);
  useEffect(() => {
    if (place.current === null) return undefined;
    const observer = new IntersectionObserver(
      (entries) => {
        if (entries.some(({ isIntersecting }) => isIntersecting)) setNear(true);
      },
      { rootMargin: ahead },
    );
    observer.observe(place.current);
    return () => observer.disconnect();
  }, [ahead]);
  if (isNear) return children;
  return <KeptFree ref={place} leastHeight={leastHeight} />;
}

interface KeptFreeProps {
  readonly leastHeight: number;
  readonly ref?: Ref<HTMLDivElement>;
}

/** The place of something that is still to come, px. */
export function KeptFree({ leastHeight, ref }: KeptFreeProps) {
  return <div ref={ref} data-kept-free="" style={{ minHeight: leastHeight }} />;
}
