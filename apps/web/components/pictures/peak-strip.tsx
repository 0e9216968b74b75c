'use client';

import type { StripFigures } from '@pullbook/contracts';
import { layoutPeakStrip } from '@pullbook/pictures';
import { usePressureFormat } from './use-pressure-format';
import { PictureFrame } from './picture-frame';

interface PeakStripProps {
  readonly figures: StripFigures;
  readonly form: 'small' | 'medium';
  readonly withTable?: boolean;
}

const leastHeights = { small: 32, medium: 84 } as const;

/** The peak strip of one preset, in the person's unit. */
export function PeakStrip({ figures, form, withTable = false }: PeakStripProps) {
  const format = usePressureFormat();
  return (
    <PictureFrame
      leastWidth={120}
      leastHeight={leastHeights[form]}
      withTable={withTable}
      layout={(width) => layoutPeakStrip(figures, { form, width }, format)}
    />
  );
}
