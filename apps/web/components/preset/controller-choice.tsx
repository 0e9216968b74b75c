'use client';

import type { Car } from '@pullbook/contracts';
import { useState } from 'react';
import { useChangeCar } from '../../queries/cars/use-change-car';
import { useControllers } from '../../queries/controllers/use-controllers';
import { Button, ButtonLink } from '../button/button';
import { ChoiceField } from '../field/choice-field';
import { Empty, Skeleton } from '../marks/marks';
import { ProblemNote } from '../marks/problem-note';

/** Which kind of controller this car has: it decides which duties can be set at all. */
export function ControllerChoice({ car }: Readonly<{ car: Car }>) {
  const controllers = useControllers();
  const change = useChangeCar();
  const [chosenId, setChosenId] = useState('');
  if (controllers.isPending) return <Skeleton lines={3} label="Loading the controllers" />;
  const all = controllers.data ?? [];
  if (all.length === 0) {
    return (
      <Empty title="No kind of controller is described yet.">
        <p>Describe the one in this car: its preset slots and the range and step of its duty.</p>
        <ButtonLink href="/controllers" kind="act">
          To the controllers
        </ButtonLink>
      </Empty>
    );
  }
  const id = chosenId === '' ? (all[0]?.id ?? '') : chosenId;
  const chosen = all.find((one) => one.id === id);
  return (
    <section className="sheet stack" aria-labelledby="which-controller">
      <h2 id="which-controller">Which controller is in {car.plate}?</h2>
      <ChoiceField
        label="Controller"
        value={id}
        onChange={setChosenId}
        choices={all.map((one) => ({
          value: one.id,
          label: one.name,
        }))}
      />
      {chosen === undefined ? null : (
        <p className="soft">
          {chosen.presetSlots} preset slots, {chosen.loop} loop, duty {chosen.dutyPct.min} to{' '}
          {chosen.dutyPct.max} % in steps of {chosen.dutyPct.step}.
        </p>
      )}
      <ProblemNote error={change.error} />
      <div className="row">
        <Button
          kind="act"
          big
          busy={change.isPending}
          onClick={() => change.mutate({ id: car.id, revision: car.revision, change: { controllerId: id } })}
        >
          Use this controller
        </Button>
        <ButtonLink href="/controllers" kind="quiet">
          Describe another kind
        </ButtonLink>
      </div>
    </section>
  );
}
