import { CarNew, CustomerNew, noLimits, noMechanics, PresetNew } from '@pullbook/contracts';
import { createCar } from '../cars/create-car.js';
import { createCustomer } from '../customers/create-customer.js';
import { createPreset } from '../presets/create-preset.js';
import { demoControllers } from './demo-controllers.js';
import { demoEngines } from './demo-engines.js';
import type { DemoPeople } from './demo-people.js';
import { demoResponse, type DemoResponse } from './demo-response.js';
import type { DemoPreset, DemoScene } from './demo-scene.js';
import type { DemoCar } from './play-visit.js';

/** Takes a scene's customer and car into the book, with its presets. */
export async function parkCar(people: DemoPeople, scene: DemoScene, controllerId: string): Promise<DemoCar> {
  const range = demoControllers[scene.controller].dutyPct;
  const response = demoResponse(scene.seed, range);
  const highestTargetKpa = Math.max(...scene.presets.map((preset) => goalOf(response, preset).targetKpa));
  const overBoostCutKpa = Math.round(highestTargetKpa * 1.16);
  const customer = await createCustomer(people.desk, CustomerNew.parse(scene.customer));
  const car = await createCar(
    people.tuner,
    CarNew.parse({
      customerId: customer.id,
      plate: scene.plate,
      model: scene.model,
      modelYear: scene.modelYear,
      buildCode: scene.buildCode,
      controllerId,
      mechanics: {
        ...noMechanics,
        ...(scene.engine === undefined ? {} : demoEngines[scene.engine]),
        actuatorSpringKpa: response.baseKpa,
        fuel: 'petrol',
      },
      limits: { ...noLimits, ...scene.limits, engineKpa: Math.round(highestTargetKpa * 1.25) },
    }),
  );
  const presets: { presetId: string; targetKpa: number }[] = [];
  for (const [place, preset] of scene.presets.entries()) {
    const goal = goalOf(response, preset);
    const { name, purpose } = preset;
    const input = PresetNew.parse({ name, purpose, slot: place + 1, ...goal });
    const { id } = await createPreset(people.tuner, car.id, input);
    presets.push({ presetId: id, targetKpa: goal.targetKpa });
  }
  return { carId: car.id, range, response, overBoostCutKpa, presets };
}

interface Goal {
  readonly targetKpa: number;
  readonly toleranceKpa: number;
  readonly ceilingKpa: number | null;
}

/** Target to the whole kilopascal, 3 % of it as tolerance, the ceiling a tenth above. */
function goalOf(response: DemoResponse, { targetRatio, hasNoCeiling }: DemoPreset): Goal {
  const targetKpa = Math.round(response.baseKpa * targetRatio);
  const toleranceKpa = Math.max(3, Math.round(targetKpa * 0.03));
  return { targetKpa, toleranceKpa, ceilingKpa: hasNoCeiling === true ? null : Math.round(targetKpa * 1.1) };
}
