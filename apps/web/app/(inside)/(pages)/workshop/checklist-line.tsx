'use client';

import type { ItemEvidence } from '@pullbook/contracts';
import { Button } from '../../../../components/button/button';
import { evidenceNames } from '../../../../components/sign-off/evidence-names';
import { FieldError } from '../../../../components/field/field-error';
import field from '../../../../components/field/field.module.css';
import type { DraftItem } from './checklist-draft';
import styles from './checklist.module.css';

interface ChecklistLineProps {
  readonly item: DraftItem;
  readonly place: { readonly number: number; readonly count: number };
  readonly fault: string | undefined;
  readonly onChange: (part: Partial<Pick<DraftItem, 'text' | 'evidence'>>) => void;
  readonly onMove: (by: -1 | 1) => void;
  readonly onRemove: () => void;
}

const kinds = Object.entries(evidenceNames) as ReadonlyArray<[ItemEvidence, string]>;

/** One item of the list while it is changed. */
export function ChecklistLine({ item, place, fault, onChange, onMove, onRemove }: ChecklistLineProps) {
  const { line, builtIn } = item;
  const { number, count } = place;
  const faultId = `fault-${line}`;
  return (
    <li>
      <div className={field.field}>
        <label htmlFor={`text-${line}`}>Item {number}</label>
        <textarea
          id={`text-${line}`}
          className={`${field.input} ${styles.words}`}
          rows={2}
          value={item.text}
          aria-invalid={fault === undefined ? undefined : true}
          aria-describedby={fault === undefined ? undefined : faultId}
          onChange={(event) => onChange({ text: event.target.value })}
        />
        <FieldError id={faultId} error={fault} />
      </div>
      {builtIn === null ? (
        <div className={field.field}>
          <label htmlFor={`ticked-${line}`}>Ticked by</label>
          <select
            id={`ticked-${line}`}
            className={field.input}
            value={item.evidence ?? ''}
            onChange={(event) =>
              onChange({ evidence: event.target.value === '' ? null : (event.target.value as ItemEvidence) })
            }
          >
            <option value="">the person who signs</option>
            {kinds.map(([kind, name]) => (
              <option key={kind} value={kind}>
                the data: {name}
              </option>
            ))}
          </select>
        </div>
      ) : (
        <BuiltInWords item={item} builtIn={builtIn} number={number} onChange={onChange} />
      )}
      <div className={styles.moves}>
        <Button
          id={`up-${line}`}
          aria-label={`Move item ${number} up`}
          aria-disabled={number === 1}
          onClick={() => onMove(-1)}
        >
          ↑ Up
        </Button>
        <Button
          id={`down-${line}`}
          aria-label={`Move item ${number} down`}
          aria-disabled={number === count}
          onClick={() => onMove(1)}
        >
          ↓ Down
        </Button>
        {builtIn === null ? (
          <Button aria-label={`Remove item ${number}`} onClick={onRemove}>
            Remove
          </Button>
        ) : null}
      </div>
    </li>
  );
}

interface BuiltInWordsProps extends Pick<ChecklistLineProps, 'item' | 'onChange'> {
  readonly builtIn: NonNullable<DraftItem['builtIn']>;
  readonly number: number;
}

/** Why the item stays, and its own words where they were changed. */
function BuiltInWords({ item, builtIn, number, onChange }: BuiltInWordsProps) {
  return (
    <div className={styles.stays}>
      <p>
        <b>Stays in the list.</b> {builtIn.reason}
      </p>
      {item.text.trim() === builtIn.text ? null : (
        <>
          <p className="soft">Its own words: {builtIn.text}</p>
          <Button
            aria-label={`Item ${number} back to its own words`}
            onClick={() => onChange({ text: builtIn.text })}
          >
            Back to its own words
          </Button>
        </>
      )}
    </div>
  );
}
