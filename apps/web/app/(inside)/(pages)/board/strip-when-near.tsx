'use client';

import type { StripFigures } from '@pullbook/contracts';
import { useEffect, useRef, useState } from 'react';
import { PeakStrip } from '../../../../components/pictures/peak-strip';
import styles from './board.module.css';

/** How far below the screen strips are drawn ahead. */
const margin = '500px 0px';

/** A peak strip that is drawn once it comes near the screen: a full yard has hundreds, a screen shows thirty. */
export function StripWhenNear({ figures }: Readonly<{ figures: StripFigures }>) {
  const place = useRef<HTMLDivElement>(null);
  const [isNear, setNear] = useState(false);
  useEffect(() => {
    const element = place.current;
    if (element === null || isNear) return undefined;
    const observer = new IntersectionObserver(
      (entries) => {
        if (entries.some((entry) => entry.isIntersecting)) setNear(true);
      },
      { rootMargin: margin },
    );
    observer.observe(element);
    return () => observer.disconnect();
  }, [isNear]);
  return (
    <div ref={place} className={styles.strip}>
      {isNear ? <PeakStrip figures={figures} form="small" /> : null}
    </div>
  );
}
