'use client';

import { Button } from '../../../../components/button/button';
import { TextField } from '../../../../components/field/text-field';
import type { Draft } from '../../../../components/form/use-draft';
import { Mind, Plate } from '../../../../components/marks/marks';
import { sayVin } from '../../../../components/vin/say-vin';
import { useCars } from '../../../../queries/cars/use-cars';
import type { Found } from './found';
import type { Chosen, IntakeValues } from './intake-draft';
import styles from './intake.module.css';

interface CarPartProps {
  readonly draft: Draft<IntakeValues>;
  readonly chosen: Chosen;
  readonly onChoose: (chosen: Chosen) => void;
  readonly lookalikes: Found | undefined;
}

/** A new car, one of the customer's cars, or one that looks like the one being typed. */
export function CarPart({ draft, chosen, onChoose, lookalikes }: CarPartProps) {
  const found = chosen.car === null ? (lookalikes?.cars ?? []) : [];
  return (
    <section className="sheet stack" aria-labelledby="car">
      <h2 id="car">Car</h2>
      {chosen.car !== null ? (
        <p className="row">
          <Plate>{chosen.car.plate}</Plate>
          <span>
            <b>{chosen.car.model}</b>, from the book
          </span>
          <Button onClick={() => onChoose({ ...chosen, car: null })}>Another car</Button>
        </p>
      ) : (
        <>
          {chosen.customer === null ? null : (
            <OwnCars customerId={chosen.customer.id} onPick={(car) => onChoose({ ...chosen, car })} />
          )}
          <div className="columns">
            <TextField label="Plate" required upperCase {...draft.bind('car.plate')} />
            <TextField
              label="Model"
              required
              hint="Such as: Estate, 2.0 turbo"
              {...draft.bind('car.model')}
            />
            <TextField label="Model year" inputMode="numeric" {...draft.bind('car.modelYear')} />
            <TextField
              label="VIN"
              upperCase
              hint={sayVin(draft.values['car.vin'])}
              {...draft.bind('car.vin')}
            />
          </div>
        </>
      )}
      {found.length === 0 ? null : (
        <Mind title="This car may be in the book already">
          <ul className={styles.found}>
            {found.map((one) => (
              <li key={one.id}>
                <span>
                  <Plate>{one.plate}</Plate> {one.model}, {one.customerName}{' '}
                  <span className="small">({one.why})</span>
                </span>
                <Button
                  aria-label={`Use this car: ${one.plate}`}
                  onClick={() =>
                    onChoose({ customer: { id: one.customerId, name: one.customerName }, car: one })
                  }
                >
                  Use this car
                </Button>
              </li>
            ))}
          </ul>
        </Mind>
      )}
    </section>
  );
}

interface OwnCarsProps {
  readonly customerId: string;
  readonly onPick: (car: { id: string; plate: string; model: string }) => void;
}

function OwnCars({ customerId, onPick }: OwnCarsProps) {
  const cars = useCars({ customerId });
  const all = cars.data?.pages.flatMap((page) => page.items) ?? [];
  if (all.length === 0) return null;
  return (
    <div className="row" role="group" aria-label="Cars of this customer">
      <span className="soft">Their cars:</span>
      {all.map((car) => (
        <Button key={car.id} onClick={() => onPick(car)}>
          {car.plate} {car.model}
        </Button>
      ))}
      <span className="soft">or a new one:</span>
    </div>
  );
}
