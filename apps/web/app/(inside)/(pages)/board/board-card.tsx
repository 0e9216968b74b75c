'use client';

import type { BoardCard as Card, Stage } from '@pullbook/contracts';
import Link from 'next/link';
import { memo } from 'react';
import { Plate } from '../../../../components/marks/marks';
import { DriftLink } from '../../../../components/preset/drift-link';
import { presetStateNames, presetStateShapes } from '../../../../components/preset/preset-state-names';
import { sayWhen } from '../../../../components/time/say-when';
import { useUnits } from '../../../../components/units/use-units';
import { MoveMenu } from './move-menu';
import { StripWhenNear } from './strip-when-near';
import styles from './board.module.css';

interface BoardCardProps {
  readonly card: Card;
  readonly onMove: (card: Card, to: Stage) => void;
}

/** One visit on the board: whose car, who works on it, how each preset stands, what comes next. */
export const BoardCard = memo(function BoardCard({ card, onMove }: BoardCardProps) {
  const units = useUnits();
  // Drift alarms have lines of their own on the card.
  const status = units.say(card.statusBesidesDrift);
  return (
    <li
      className={styles.card}
      draggable
      onDragStart={(event) => {
        event.dataTransfer.setData('text/plain', card.visitId);
        event.dataTransfer.effectAllowed = 'move';
      }}
    >
      <div className={styles.cardTop}>
        <Link
          href={`/visits/${card.visitId}`}
          className={styles.cardLink}
          aria-label={`${card.plate}, ${card.model}`}
        >
          <Plate>{card.plate}</Plate>
        </Link>
        <span className={styles.model} aria-hidden="true">
          {card.model}
        </span>
        <MoveMenu card={card} onMove={onMove} />
      </div>
      <p className={styles.facts}>{factsOf(card, new Date())}</p>
      {card.presets.map((preset) => (
        <div key={preset.presetId} className={styles.preset}>
          <p>
            {preset.slot} {preset.name}{' '}
            <span className="soft small">
              <span aria-hidden="true">{presetStateShapes[preset.state]} </span>
              {presetStateNames[preset.state]}
            </span>
          </p>
          <StripWhenNear figures={preset.strip} />
        </div>
      ))}
      {card.presets.map(({ presetId, name, drift }) => (
        <DriftLink key={presetId} carId={card.carId} presetId={presetId} name={name} drift={drift} />
      ))}
      {status === '' ? null : (
        <p className={card.needsAttention ? styles.statusMind : styles.status}>
          {card.needsAttention ? <span aria-hidden="true">▲ </span> : null}
          {status}
        </p>
      )}
    </li>
  );
});

/** Customer, tuner, bay and the time that matters at this stage, as far as known. */
export function factsOf(card: Card, now: Date): string {
  const when =
    card.stage === 'booked' && card.bookedFor !== null
      ? sayWhen(card.bookedFor, now)
      : card.promisedAt === null
        ? null
        : `promised ${sayWhen(card.promisedAt, now)}`;
  return [card.customerName, card.tunerName, card.bay, when]
    .filter((one) => one !== null && one !== '')
    .join(' · ');
}
