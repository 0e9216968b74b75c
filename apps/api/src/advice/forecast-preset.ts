import type { Forecast, ForecastRequest } from '@pullbook/contracts';
import { fitConditions, forecastPeak } from '@pullbook/tuning-math';

/**
 * What a preset will peak at under other conditions, from its pulls.
 *
 * @throws ArgumentError
 */
export function forecastPreset({ pulls, conditions, ceilingKpa }: ForecastRequest): Forecast {
  const conditioned = pulls.map(({ peakKpa, ...known }) => ({ peakKpa, conditions: known }));
  const model = fitConditions(conditioned);
  const { unknown, outside, ...range } = forecastPeak(model, conditions, { ceilingKpa });
  return {
    ...range,
    effects: model.effects.map((effect) => ({ ...effect })),
    unknown: [...unknown],
    outside: [...outside],
  };
}
