'use client';

import type { Me } from '@pullbook/contracts';
import dynamic from 'next/dynamic';
import { useState } from 'react';

const TourCard = dynamic(() => import('./tour-card').then((part) => part.TourCard), { ssr: false });

interface TourPlaceProps {
  readonly me: Me;
  /** Whether the server is just being asked who is signed in. */
  readonly isAsking: boolean;
}

/** Where the first tour stands, over the screen and in its flow; nothing of it is loaded once it is over. */
export function TourPlace({ me, isAsking }: TourPlaceProps) {
  // What this device kept may be of the time before the tour was ended: after a reload the server says so first.
  const [wasAsked, setAsked] = useState(!isAsking);
  if (!wasAsked && !isAsking) setAsked(true);
  return me.tourStep === null || !wasAsked ? null : <TourCard me={me} step={me.tourStep} />;
}
