import type { EnginePoint } from '@pullbook/contracts';
import type { PersonsUnits } from '../../../../../../components/units/use-units';

/** What a point of the engine sheet stands for: 'Everyday, target 74 kPa'. */
export function pointName(
  { at, presetName, boostKpa }: Pick<EnginePoint, 'at' | 'presetName' | 'boostKpa'>,
  units: PersonsUnits,
): string {
  const boost = units.write(boostKpa);
  if (at === 'limit') return `highest ceiling of the car, ${boost}`;
  return `${presetName ?? 'preset'}, ${at} ${boost}`;
}
