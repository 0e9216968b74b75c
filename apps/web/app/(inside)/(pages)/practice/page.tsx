import type { Metadata } from 'next';
import { Suspense } from 'react';
import { PracticeScreen } from './practice-screen';

export const metadata: Metadata = { title: 'Practice' };

/** One document for every car: which one is read from the address here, so that it opens without network, too. */
export default function PracticePage() {
  return (
    <Suspense>
      <PracticeScreen />
    </Suspense>
  );
}
