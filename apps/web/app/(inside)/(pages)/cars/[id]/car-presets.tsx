'use client';

import type { Car, Preset } from '@pullbook/contracts';
import { useState } from 'react';
import { Button } from '../../../../../components/button/button';
import { Dialog } from '../../../../../components/dialog/dialog';
import { HelpRow } from '../../../../../components/help/help-row';
import { Empty, Skeleton } from '../../../../../components/marks/marks';
import { ProblemNote } from '../../../../../components/marks/problem-note';
import { DriftLink } from '../../../../../components/preset/drift-link';
import { GoalForm } from '../../../../../components/preset/goal-form';
import { PresetForm } from '../../../../../components/preset/preset-form';
import { ProofLines } from '../../../../../components/preset/proof-lines';
import { useUnits } from '../../../../../components/units/use-units';
import { usePresets } from '../../../../../queries/presets/use-presets';
import { RevisionsDialog } from './revisions-dialog';
import styles from './car.module.css';

interface CarPresetsProps {
  readonly car: Car;
  readonly mayTune: boolean;
}

type Opened = { readonly kind: 'add' } | { readonly kind: 'goal' | 'revisions'; readonly preset: Preset };

/** What each preset does, and every revision that it has had. */
export function CarPresets({ car, mayTune }: CarPresetsProps) {
  const presets = usePresets(car.id);
  const [opened, setOpened] = useState<Opened | null>(null);
  const close = () => setOpened(null);
  const all = presets.data ?? [];
  return (
    <section className="sheet stack" aria-labelledby="presets">
      <div className="row">
        <h2 id="presets">Presets</h2>
        <span className="grow" />
        {/* Not before the list is there: the form looks for a free slot in it. */}
        {mayTune && presets.data !== undefined ? (
          <Button onClick={() => setOpened({ kind: 'add' })}>Add preset</Button>
        ) : null}
      </div>
      <ProblemNote error={presets.error} onRetry={() => void presets.refetch()} />
      {presets.isPending ? <Skeleton lines={3} label="Loading the presets" /> : null}
      {presets.data !== undefined && all.length === 0 ? (
        <Empty title="No preset yet.">
          <p>Agree with the customer what the first one is for, its target and its ceiling.</p>
        </Empty>
      ) : null}
      <ul className={styles.presets}>
        {all.map((preset) => (
          <PresetLine key={preset.id} preset={preset} mayTune={mayTune} onOpen={setOpened} />
        ))}
      </ul>
      {all.length === 0 ? null : (
        <HelpRow words={['target', 'tolerance', 'ceiling', 'duty', 'gate_hold', 'proven', 'revision']} />
      )}
      {opened === null ? null : <OpenedDialog opened={opened} car={car} presets={all} onClose={close} />}
    </section>
  );
}

interface OpenedDialogProps {
  readonly opened: Opened;
  readonly car: Car;
  readonly presets: readonly Preset[];
  readonly onClose: () => void;
}

function OpenedDialog({ opened, car, presets, onClose }: OpenedDialogProps) {
  if (opened.kind === 'revisions') return <RevisionsDialog preset={opened.preset} onClose={onClose} />;
  const standing = presets.filter((one) => one.state !== 'replaced');
  return opened.kind === 'add' ? (
    <Dialog title="Add preset" onClose={onClose} wide>
      <PresetForm car={car} presets={standing} onDone={onClose} />
    </Dialog>
  ) : (
    <Dialog title={`Target and ceiling of ${opened.preset.name}`} onClose={onClose} wide>
      <GoalForm preset={opened.preset} car={car} onDone={onClose} />
    </Dialog>
  );
}

interface PresetLineProps {
  readonly preset: Preset;
  readonly mayTune: boolean;
  readonly onOpen: (opened: Opened) => void;
}

function PresetLine({ preset, mayTune, onOpen }: PresetLineProps) {
  const units = useUnits();
  const target =
    preset.targetKpa === null
      ? 'no target agreed'
      : `target ${units.figure(preset.targetKpa)} ± ${units.write(preset.toleranceKpa)}`;
  const ceiling =
    preset.ceilingKpa === null ? 'no ceiling agreed' : `ceiling ${units.write(preset.ceilingKpa)}`;
  const duty = preset.dutyPct === null ? 'no duty yet' : `duty ${preset.dutyPct} %`;
  return (
    <li>
      <p>
        <b>
          {preset.slot} {preset.name}
        </b>
      </p>
      {preset.purpose === '' ? null : <p className="soft">{preset.purpose}</p>}
      <p>{[target, ceiling, duty, ...holdOf(preset)].join(' · ')}</p>
      <ProofLines preset={preset} />
      <DriftLink carId={preset.carId} presetId={preset.id} drift={preset.drift} />
      <div className="row">
        {mayTune ? (
          <Button
            kind="quiet"
            aria-label={`Change target and ceiling of ${preset.name}`}
            onClick={() => onOpen({ kind: 'goal', preset })}
          >
            Change target and ceiling
          </Button>
        ) : null}
        <Button
          kind="quiet"
          aria-label={`Revisions of ${preset.name}`}
          onClick={() => onOpen({ kind: 'revisions', preset })}
        >
          Revisions
        </Button>
      </div>
    </li>
  );
}

function holdOf({ gateHoldPct, correctionStrength }: Preset): string[] {
  return [
    ...(gateHoldPct === null ? [] : [`gate hold ${gateHoldPct} %`]),
    ...(correctionStrength === null ? [] : [`correction strength ${correctionStrength}`]),
  ];
}
