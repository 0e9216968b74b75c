import { AirOfDay, CarLimits, Mechanics } from '@pullbook/contracts';
import type { LogOptions } from '@pullbook/tuning-math';

/** What the book knows beside the file of a log: gearing, rev limit and sensor of the car, air of the day. */
export function logOptionsOfCar(car: { mechanics: unknown; limits: unknown }, air: unknown): LogOptions {
  const { gearRatios, finalDriveRatio, tyreRollingCircumferenceM, revLimitRpm } = Mechanics.parse(
    car.mechanics,
  );
  return {
    gearRatios,
    finalDriveRatio,
    tyreRollingCircumferenceM,
    revLimitRpm,
    sensorFullScaleKpa: CarLimits.parse(car.limits).sensorFullScaleKpa,
    barometricAbsKpa: AirOfDay.parse(air).pressureAbsKpa,
  };
}
