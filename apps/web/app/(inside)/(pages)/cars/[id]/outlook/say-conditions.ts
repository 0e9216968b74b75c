import type { ConditionName, OutlookPull } from '@pullbook/contracts';
import type { PersonsUnits } from '../../../../../../components/units/use-units';

type Conditions = Pick<OutlookPull, 'gear' | 'gradientPct' | 'intakeC' | 'barometerAbsKpa' | 'heatSoakC'>;

/** Conditions as they head a column or stand in a sentence. */
export const conditionNames: Readonly<Record<ConditionName, string>> = {
  gear: 'gear',
  gradient: 'gradient',
  intake: 'intake air',
  barometer: 'barometer',
  heatSoak: 'heat soak',
};

/** 'gear 4, level road, intake air 14 °C, barometer 100.6 kPa, no heat soak'; what is not known is left out. */
export function sayConditions(conditions: Conditions, units: PersonsUnits): string {
  const { gear, gradientPct, intakeC, barometerAbsKpa, heatSoakC } = conditions;
  const parts = [
    gear === null ? null : `gear ${gear}`,
    gradientPct === null ? null : gradientPct === 0 ? 'level road' : `${gradientPct.toFixed(1)} % uphill`,
    intakeC === null ? null : `intake air ${units.writeTemperature(intakeC)}`,
    barometerAbsKpa === null
      ? null
      : `barometer ${units.peak(barometerAbsKpa)} ${units.pressureWord} absolute`,
    heatSoakC === null ? null : heatSoakC === 0 ? 'no heat soak' : `${heatSoakC.toFixed(0)} K heat soak`,
  ];
  return parts.filter((part) => part !== null).join(', ');
}
