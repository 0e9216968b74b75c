'use client';

import { WorkshopChange, type Workshop } from '@pullbook/contracts';
import type { FormEvent } from 'react';
import { Button } from '../../../../components/button/button';
import { ChoiceField } from '../../../../components/field/choice-field';
import { TextField } from '../../../../components/field/text-field';
import { readValues } from '../../../../components/form/read-values';
import { useDraft } from '../../../../components/form/use-draft';
import { ProblemNote } from '../../../../components/marks/problem-note';
import { ProofRules, sayInPercent } from './proof-rules';
import { useNotices } from '../../../../components/notices/notices';
import { useUnits } from '../../../../components/units/use-units';
import { useChangeWorkshop } from '../../../../queries/people/use-workshop';

/** Name, units of paper and new people, and the rules that advice and proof hold to. */
export function WorkshopForm({ workshop }: Readonly<{ workshop: Workshop }>) {
  const units = useUnits();
  const notices = useNotices();
  const change = useChangeWorkshop();
  const draft = useDraft({
    name: workshop.name,
    pressure: workshop.units.pressure as string,
    temperature: workshop.units.temperature as string,
    requiredPulls: String(workshop.requiredPulls),
    stepLimit: String(workshop.stepLimit),
    riskLimit: String(Math.round(workshop.riskLimit * 100_000) / 1000),
    overshootLimitPct: String(workshop.overshootLimitPct),
    coverageRatio: String(Math.round(workshop.coverageRatio * 1000) / 10),
    confidenceRatio: String(Math.round(workshop.confidenceRatio * 1000) / 10),
    signOffNeedsProof: workshop.signOffNeedsProof ? 'yes' : '',
    leansOnEarlierCars: workshop.leansOnEarlierCars ? 'yes' : 'no',
  });
  const submit = (event: FormEvent) => {
    event.preventDefault();
    const read = readValues(draft.values, units, WorkshopChange, (from) => {
      const riskPct = from.numberOrNull('riskLimit');
      return {
        name: from.text('name'),
        units: { pressure: from.text('pressure'), temperature: from.text('temperature') },
        requiredPulls: from.numberOrNull('requiredPulls'),
        stepLimit: from.numberOrNull('stepLimit'),
        riskLimit: riskPct === null ? null : riskPct / 100,
        overshootLimitPct: from.numberOrNull('overshootLimitPct'),
        coverageRatio: (from.numberOrNull('coverageRatio') ?? NaN) / 100,
        confidenceRatio: (from.numberOrNull('confidenceRatio') ?? NaN) / 100,
        signOffNeedsProof: draft.values.signOffNeedsProof === 'yes',
        leansOnEarlierCars: from.text('leansOnEarlierCars') === 'yes',
      };
    });
    if ('faults' in read) return draft.fail(sayInPercent(read.faults));
    return change.mutate(
      { revision: workshop.revision, change: read.data },
      { onSuccess: () => notices.done('Workshop saved.'), onError: draft.failFrom },
    );
  };
  return (
    <form onSubmit={submit} noValidate className="sheet stack" aria-labelledby="rules">
      <h2 id="rules">Name, units, rules</h2>
      <div className="columns">
        <TextField label="Name of the workshop" hint="As on paper and report." {...draft.bind('name')} />
        <ChoiceField
          label="Pressure on paper"
          choices={['kPa', 'bar', 'psi'].map((value) => ({ value, label: value }))}
          {...draft.bind('pressure')}
        />
        <ChoiceField
          label="Temperature on paper"
          choices={[
            { value: 'C', label: '°C' },
            { value: 'F', label: '°F' },
          ]}
          {...draft.bind('temperature')}
        />
      </div>
      <div className="columns">
        <TextField
          label="Pulls that prove a preset, at least"
          inputMode="numeric"
          {...draft.bind('requiredPulls')}
        />
        <TextField
          label="Step limit, points of duty a pull"
          inputMode="decimal"
          hint="At most 10."
          {...draft.bind('stepLimit')}
        />
        <TextField
          label="Risk limit, % chance of passing the ceiling"
          unit="%"
          inputMode="decimal"
          hint="At most 5 %."
          {...draft.bind('riskLimit')}
        />
        <ChoiceField
          label="Lean on earlier cars of the same build"
          choices={[
            { value: 'yes', label: 'Yes, limits stay as they are' },
            { value: 'no', label: 'No, only on its own pulls' },
          ]}
          {...draft.bind('leansOnEarlierCars')}
        />
      </div>
      <ProofRules draft={draft} />
      <ProblemNote error={change.error} />
      <p>
        <Button type="submit" busy={change.isPending}>
          Save workshop
        </Button>
      </p>
    </form>
  );
}
