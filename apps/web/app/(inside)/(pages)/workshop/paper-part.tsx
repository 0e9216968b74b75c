'use client';

import { PaperHeader, type Workshop } from '@pullbook/contracts';
import type { FormEvent } from 'react';
import { Button } from '../../../../components/button/button';
import { ChoiceField } from '../../../../components/field/choice-field';
import { TextField } from '../../../../components/field/text-field';
import { readValues } from '../../../../components/form/read-values';
import { useDraft, type Faults } from '../../../../components/form/use-draft';
import { ProblemNote } from '../../../../components/marks/problem-note';
import { useNotices } from '../../../../components/notices/notices';
import { useUnits } from '../../../../components/units/use-units';
import { useChangeWorkshop } from '../../../../queries/people/use-workshop';
import { PaperPreview } from './paper-preview';
import styles from './paper.module.css';

const zones = Intl.supportedValuesOf('timeZone');
const zoneHere = new Intl.DateTimeFormat().resolvedOptions().timeZone;

/** What stands at the head and foot of job sheet and report? */
export function PaperPart({ workshop }: Readonly<{ workshop: Workshop }>) {
  const units = useUnits();
  const notices = useNotices();
  const change = useChangeWorkshop();
  const { paperHeader } = workshop;
  const { phone, online, registration, foot } = paperHeader;
  // An answer that this device has kept for long may be from before there was one.
  const timeZone = paperHeader.timeZone ?? '';
  const draft = useDraft({
    address: paperHeader.addressLines.join('\n'),
    ...{ phone, online, registration, foot, timeZone },
    paper: paperHeader.paper as string,
  });
  const { values } = draft;
  const addressLines = linesOf(values.address);
  const submit = (event: FormEvent) => {
    event.preventDefault();
    const read = readValues(values, units, PaperHeader, () => ({ ...values, addressLines }));
    if ('faults' in read) return draft.fail(inOwnWords(read.faults));
    return change.mutate(
      { revision: workshop.revision, change: { paperHeader: read.data } },
      {
        onSuccess: () =>
          notices.done('Paper header saved. It stands on everything that is printed from now on.'),
      },
    );
  };
  return (
    <form onSubmit={submit} noValidate className="sheet stack" aria-labelledby="paper">
      <h2 id="paper">Paper header</h2>
      <p className="soft">
        On job sheets, preset reports and the page that the customer reads, also on those of earlier visits:
        it tells how you are reached today and is no part of what was signed. What is left empty is not
        printed.
      </p>
      <div className={styles.both}>
        <div className="stack">
          <TextField
            label="Address"
            lines={4}
            hint="At most 4 lines of 80 characters."
            autoComplete="street-address"
            {...draft.bind('address')}
          />
          <TextField label="Telephone" type="tel" autoComplete="tel" {...draft.bind('phone')} />
          <TextField label="E-mail or web address" {...draft.bind('online')} />
          <TextField
            label="Registration or tax number"
            hint="At the foot of each page."
            {...draft.bind('registration')}
          />
          <TextField
            label="Line at the foot"
            hint="At most 160 characters; on paper two lines at most."
            {...draft.bind('foot')}
          />
          <ChoiceField
            label="Paper"
            choices={[
              { value: 'a4', label: 'A4' },
              { value: 'letter', label: 'Letter' },
            ]}
            {...draft.bind('paper')}
          />
          <TextField
            label="Time zone of the times on paper"
            hint={`Such as ${zoneHere}, where this device is. Empty: that of the machine that Pullbook runs on.`}
            suggestions={zones}
            {...draft.bind('timeZone')}
          />
        </div>
        <PaperPreview
          name={workshop.name}
          header={{ ...values, addressLines, paper: values.paper === 'letter' ? 'letter' : 'a4' }}
        />
      </div>
      <ProblemNote error={change.error} />
      <p>
        <Button type="submit" busy={change.isPending}>
          Save paper header
        </Button>
      </p>
    </form>
  );
}

const linesOf = (text: string) =>
  text
    .split('\n')
    .map((line) => line.trim())
    .filter((line) => line !== '');

/** The contract names each line of the address, the form has one field for them all. */
function inOwnWords(faults: Faults): Faults {
  return Object.fromEntries(
    Object.entries(faults).map(([name, text]) => [name.startsWith('addressLines') ? 'address' : name, text]),
  );
}
