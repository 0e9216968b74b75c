'use client';

import { Button } from '../../../../components/button/button';
import { TextField } from '../../../../components/field/text-field';
import type { Draft } from '../../../../components/form/use-draft';
import { Mind } from '../../../../components/marks/marks';
import type { Chosen, IntakeValues } from './intake-draft';
import type { Found } from './found';
import styles from './intake.module.css';

interface CustomerPartProps {
  readonly draft: Draft<IntakeValues>;
  readonly chosen: Chosen;
  readonly onChoose: (chosen: Chosen) => void;
  readonly lookalikes: Found | undefined;
}

/** A new customer, or one from the book. */
export function CustomerPart({ draft, chosen, onChoose, lookalikes }: CustomerPartProps) {
  const found = chosen.customer === null ? (lookalikes?.customers ?? []) : [];
  return (
    <section className="sheet stack" aria-labelledby="customer">
      <h2 id="customer">Customer</h2>
      {chosen.customer === null ? (
        <div className="columns">
          <TextField label="Name" required autoFocus {...draft.bind('customer.name')} />
          <TextField label="Phone" type="tel" {...draft.bind('customer.phone')} />
          <TextField label="Email" type="email" {...draft.bind('customer.email')} />
        </div>
      ) : (
        <p className="row">
          <span>
            <b>{chosen.customer.name}</b>, from the book
          </span>
          <Button onClick={() => onChoose({ customer: null, car: null })}>Somebody else</Button>
        </p>
      )}
      {found.length === 0 ? null : (
        <Mind title="In the book already?">
          <ul className={styles.found}>
            {found.map((one) => (
              <li key={one.id}>
                <span>
                  <b>{one.name}</b>
                  {one.phone === null ? '' : `, ${one.phone}`} <span className="small">({one.why})</span>
                </span>
                <Button
                  aria-label={`Use this customer: ${one.name}`}
                  onClick={() => onChoose({ ...chosen, customer: { id: one.id, name: one.name } })}
                >
                  Use this customer
                </Button>
              </li>
            ))}
          </ul>
        </Mind>
      )}
    </section>
  );
}
