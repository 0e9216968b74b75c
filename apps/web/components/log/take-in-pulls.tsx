'use client';

import type { Preset } from '@pullbook/contracts';
import dynamic from 'next/dynamic';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { logQueryOptions } from '../../queries/logs/use-logs';
import { usePresets } from '../../queries/presets/use-presets';
import { Dialog } from '../dialog/dialog';
import { ChoiceField } from '../field/choice-field';
import { Empty, Skeleton } from '../marks/marks';
import { ProblemNote } from '../marks/problem-note';

const FoundPulls = dynamic(() => import('./found-pulls').then((part) => part.FoundPulls), {
  loading: () => <Skeleton lines={4} label="Opening the pulls found" />,
});

interface TakeInPullsProps {
  readonly visitId: string;
  readonly logId: string;
  readonly carId: string;
  readonly title: string;
  readonly onClose: () => void;
}

/** The pulls found in a log on record, to be taken into the book for one of the car's presets. */
export function TakeInPulls({ visitId, logId, carId, title, onClose }: TakeInPullsProps) {
  const log = useQuery(logQueryOptions(logId));
  const presets = usePresets(carId);
  const [presetId, setPresetId] = useState('');
  const all = presets.data ?? [];
  const preset = all.find(({ id }) => id === presetId || all.length === 1);
  return (
    <Dialog title={title} onClose={onClose} wide>
      <div className="stack">
        <ProblemNote error={log.error ?? presets.error} />
        {presets.data?.length === 0 ? <NoPreset /> : null}
        <PresetChoice presets={all} presetId={presetId} onChoose={setPresetId} />
        {log.isPending || presets.isPending ? <Skeleton lines={4} label="Opening the log" /> : null}
        {log.data === undefined || preset === undefined ? null : (
          <FoundPulls
            key={`${preset.id} ${log.data.version}`}
            visitId={visitId}
            log={log.data}
            preset={preset}
            dutyPct={null}
            onDone={onClose}
          />
        )}
      </div>
    </Dialog>
  );
}

function NoPreset() {
  return (
    <Empty title="This car has no preset yet.">
      <p>Agree one with the customer first; then pulls can be taken in for it.</p>
    </Empty>
  );
}

interface PresetChoiceProps {
  readonly presets: readonly Preset[];
  readonly presetId: string;
  readonly onChoose: (presetId: string) => void;
}

/** Of a car with several presets; the only one needs no choice. */
function PresetChoice({ presets, presetId, onChoose }: PresetChoiceProps) {
  if (presets.length < 2) return null;
  return (
    <ChoiceField
      label="Driven with the preset"
      value={presetId}
      onChange={onChoose}
      choices={[
        { value: '', label: 'Choose the preset' },
        ...presets.map(({ id, slot, name }) => ({ value: id, label: `${slot} ${name}` })),
      ]}
    />
  );
}
