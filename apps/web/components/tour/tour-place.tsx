'use client';

import type { Me } from '@pullbook/contracts';
import dynamic from 'next/dynamic';

const TourCard = dynamic(() => import('./tour-card').then((part) => part.TourCard), { ssr: false });

/** Where the first tour stands, over the screen and in its flow; nothing of it is loaded once it is over. */
export function TourPlace({ me }: Readonly<{ me: Me }>) {
  return me.tourStep === null ? null : <TourCard me={me} step={me.tourStep} />;
}
