'use client';

import { layoutResponseChart, type ChartFigures } from '@pullbook/pictures';
import { PictureFrame } from './picture-frame';
import { usePressureFormat } from './use-pressure-format';

const chartHeight = 280;

/** Peak against duty: pulls, curve and band, target and ceiling, in the person's unit, with its table. */
export function ResponseChart({ figures }: Readonly<{ figures: ChartFigures }>) {
  const format = usePressureFormat();
  return (
    <PictureFrame
      leastWidth={240}
      leastHeight={chartHeight}
      withTable
      layout={(width) => layoutResponseChart(figures, { form: 'screen', width, height: chartHeight }, format)}
    />
  );
}
