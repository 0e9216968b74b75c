'use client';

import type { Log, LogChannel } from '@pullbook/contracts';
import { useState } from 'react';
import { useAnalyseLog } from '../../queries/logs/use-analyse-log';
import { Button } from '../button/button';
import { ProblemNote } from '../marks/problem-note';
import { KeepReading } from './keep-reading';
import { quantityNames, unitName } from './quantity-names';
import { draftOfChannels } from './reading-draft';
import styles from './reading.module.css';

interface LogColumnsProps {
  readonly log: Log;
  /** It was read anew, as a person said. */
  readonly onReadAnew: (log: Log) => void;
}

/** What each column of a log was taken for, before anything in it is used; wrong ones are corrected here. */
export function LogColumns({ log, onReadAnew }: LogColumnsProps) {
  const { channels, shape } = log.analysis;
  const analyse = useAnalyseLog();
  const [draft, setDraft] = useState(() => draftOfChannels(channels, log.reading));
  const [isOpen, setOpen] = useState(false);
  const used = channels.filter(({ quantity }) => quantity !== 'unknown');
  const aside = channels.filter(({ quantity }) => quantity === 'unknown');
  const guessed = used.filter(({ certain }) => !certain);
  return (
    <section className="stack" aria-labelledby="log-columns">
      <div className="row">
        <h3 id="log-columns">
          {guessed.length === 0 ? 'Columns as they are read' : `▲ Check ${guessed.length} guessed below`}
        </h3>
        <span className="grow" />
        <Button aria-expanded={isOpen} onClick={() => setOpen(!isOpen)}>
          {isOpen ? 'Leave as it was' : 'Correct columns'}
        </Button>
      </div>
      {isOpen ? (
        <>
          <KeepReading
            draft={draft}
            onChange={setDraft}
            shape={shape}
            recipeId={log.recipeId}
            fileName={log.fileName}
            busy={analyse.isPending}
            onRead={(reading) =>
              analyse.mutate(
                { logId: log.id, input: { settings: 'workshop', reading } },
                { onSuccess: onReadAnew },
              )
            }
          />
          <ProblemNote error={analyse.error} title="The log could not be read so" />
        </>
      ) : (
        <ul className={styles.known}>
          {used.map((channel) => (
            <KnownColumn key={`${channel.header} ${channel.occurrence}`} channel={channel} />
          ))}
        </ul>
      )}
      {isOpen || aside.length === 0 ? null : (
        <p className="soft">Left aside: {aside.map(({ header }) => header).join(', ')}</p>
      )}
    </section>
  );
}

function KnownColumn({ channel }: Readonly<{ channel: LogChannel }>) {
  const { header, quantity, unit, certain, basis, reference, lowest, highest } = channel;
  const name = quantityNames[quantity as keyof typeof quantityNames] ?? quantity;
  const kind = reference === null || name.includes(reference) ? '' : `, ${reference}`;
  return (
    <li>
      <span>
        <b>
          {name}
          {kind}
        </b>{' '}
        {unitName(unit)}
        {certain ? null : <span className={styles.guess}> ▲ guessed</span>}
        {basis === 'recipe' ? <span className="soft"> as told</span> : null}
      </span>
      <span className="soft">
        “{header}”{lowest === null || highest === null ? '' : `, ${short(lowest)} to ${short(highest)}`}
      </span>
    </li>
  );
}

const short = (value: number) => String(Number(value.toPrecision(4)));
