'use client';

import type { Controller, SettingRange } from '@pullbook/contracts';
import { useState } from 'react';
import { Button } from '../../../../components/button/button';
import { Dialog } from '../../../../components/dialog/dialog';
import { Empty, Skeleton } from '../../../../components/marks/marks';
import { ProblemNote } from '../../../../components/marks/problem-note';
import { useControllers } from '../../../../queries/controllers/use-controllers';
import { useSignedInMe } from '../../../../queries/people/use-me';
import { ControllerForm } from './controller-form';
import styles from './controllers.module.css';

/** Which kinds of controller does this workshop know, and what can be set on each? */
export function ControllersScreen() {
  const controllers = useControllers();
  const mayTune = useSignedInMe().member.role !== 'desk';
  const [opened, setOpened] = useState<Controller | 'new' | null>(null);
  const describe = (
    <Button kind="act" onClick={() => setOpened('new')}>
      Describe a controller
    </Button>
  );
  return (
    <div className="stack">
      <header className="row">
        <h1>Controllers</h1>
        <span className="grow" />
        {mayTune ? describe : null}
      </header>
      <p className="soft">
        Kinds of boost controller as this workshop describes them: what can be set, in which range and steps.
      </p>
      <ProblemNote error={controllers.error} onRetry={() => void controllers.refetch()} />
      {controllers.isPending ? <Skeleton lines={5} label="Loading the controllers" /> : null}
      {controllers.data?.length === 0 ? (
        <Empty title="No kind of controller is described yet.">
          <p>Look at the controller in the first car: how many preset slots, which range and step of duty?</p>
          {mayTune ? describe : null}
        </Empty>
      ) : null}
      <ul className={styles.list}>
        {(controllers.data ?? []).map((one) => (
          <li key={one.id} className="sheet stack">
            <div className="row">
              <h2 className="grow">{one.name}</h2>
              {mayTune ? (
                <Button kind="quiet" aria-label={`Change ${one.name}`} onClick={() => setOpened(one)}>
                  Change
                </Button>
              ) : null}
            </div>
            <dl className={styles.facts}>
              {factsOf(one).map(([name, value]) => (
                <div key={name}>
                  <dt>{name}</dt>
                  <dd>{value}</dd>
                </div>
              ))}
            </dl>
            {one.note === '' ? null : <p className="soft">{one.note}</p>}
          </li>
        ))}
      </ul>
      {opened === null ? null : (
        <Dialog
          title={opened === 'new' ? 'Describe a controller' : `Change ${opened.name}`}
          onClose={() => setOpened(null)}
          wide
        >
          <ControllerForm controller={opened === 'new' ? null : opened} onDone={() => setOpened(null)} />
        </Dialog>
      )}
    </div>
  );
}

function factsOf(one: Controller): ReadonlyArray<readonly [string, string]> {
  return [
    ['Preset slots', `${one.presetSlots}${one.hasTimedOverride ? ', and a timed override' : ''}`],
    ['Loop', one.loop],
    ['Duty', sayRange(one.dutyPct, ' %')],
    ['Gate hold', one.holdPct === null ? 'cannot be set' : sayRange(one.holdPct, ' % of target')],
    ['Correction strength', one.correction === null ? 'cannot be set' : sayRange(one.correction, '')],
  ];
}

function sayRange({ min, max, step }: SettingRange, unit: string): string {
  return `${min} to ${max}${unit}, in steps of ${step}`;
}
