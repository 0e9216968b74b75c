'use client';

import type { StripFigures } from '@pullbook/contracts';
import { WhenNear } from '../../../../components/near/when-near';
import { PeakStrip } from '../../../../components/pictures/peak-strip';

/** How far below the screen strips are drawn ahead. */
const margin = '500px 0px';
const stripHeight = 46;

/** A peak strip that is drawn once it comes near the screen: a full yard has hundreds, a screen shows thirty. */
export function StripWhenNear({ figures }: Readonly<{ figures: StripFigures }>) {
  return (
    <WhenNear leastHeight={stripHeight} ahead={margin}>
      <PeakStrip figures={figures} form="small" />
    </WhenNear>
  );
}
