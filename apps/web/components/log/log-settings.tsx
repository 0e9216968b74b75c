'use client';

import type { Controller, Log, Preset } from '@pullbook/contracts';
import { useEffect } from 'react';
import { TextField } from '../field/text-field';
import type { Draft } from '../form/use-draft';
import { useNextGateHold } from '../../queries/advice/use-next-gate-hold';
import { useCar } from '../../queries/cars/use-cars';
import { useControllers } from '../../queries/controllers/use-controllers';
import { heldMore, noMore } from '../pull/more-values';

/** Settings beside the duty that the pulls of a log were driven with; empty until known. */
export const noLogSettings = { holdPct: '', correctionStrength: '' };

interface LogSettingsProps {
  readonly log: Log;
  readonly preset: Preset;
  readonly draft: Pick<Draft<typeof noLogSettings>, 'values' | 'faults' | 'set'>;
}

/** Gate hold and correction strength of the pulls in a log, as far as the car's controller has them. */
export function LogSettings({ log, preset, draft }: LogSettingsProps) {
  const controller = useControllerOf(preset.carId);
  const hold = useNextGateHold(log.tuningSessionId, preset).data;
  const held = heldMore({ typed: noMore, preset, controller, hold, lastPull: undefined });
  const { holdPct, correctionStrength } = held;
  useEffect(() => {
    draft.set({ holdPct, correctionStrength });
    // What is known of the settings changes; what the person typed since then is only lost with it.
  }, [holdPct, correctionStrength]);
  const field = (name: keyof typeof noLogSettings, label: string, unit?: string) => (
    <TextField
      label={label}
      unit={unit}
      inputMode="decimal"
      value={draft.values[name]}
      error={draft.faults[name]}
      onChange={(text) => draft.set({ [name]: text })}
    />
  );
  return (
    <>
      {controller?.holdPct ? field('holdPct', 'Gate hold that was set, %', '%') : null}
      {controller?.correction ? field('correctionStrength', 'Correction strength that was set') : null}
    </>
  );
}

function useControllerOf(carId: string): Controller | null {
  const car = useCar(carId).data;
  return useControllers().data?.find((one) => one.id === car?.controllerId) ?? null;
}
