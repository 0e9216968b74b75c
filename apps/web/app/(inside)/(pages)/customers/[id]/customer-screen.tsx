'use client';

import { CustomerChange, type Customer } from '@pullbook/contracts';
import Link from 'next/link';
import type { FormEvent } from 'react';
import { Button } from '../../../../../components/button/button';
import { TextField } from '../../../../../components/field/text-field';
import { readValues } from '../../../../../components/form/read-values';
import { useDraft } from '../../../../../components/form/use-draft';
import { Plate, Skeleton } from '../../../../../components/marks/marks';
import { NotLoaded } from '../../../../../components/marks/not-loaded';
import { ProblemNote } from '../../../../../components/marks/problem-note';
import { useNotices } from '../../../../../components/notices/notices';
import { useUnits } from '../../../../../components/units/use-units';
import { useCars } from '../../../../../queries/cars/use-cars';
import { useChangeCustomer } from '../../../../../queries/customers/use-change-customer';
import { useCustomer } from '../../../../../queries/customers/use-customers';
import styles from './customer.module.css';

/** How to reach this customer, and which cars are theirs. */
export function CustomerScreen({ customerId }: Readonly<{ customerId: string }>) {
  const customer = useCustomer(customerId);
  const cars = useCars({ customerId });
  const all = cars.data?.pages.flatMap((page) => page.items) ?? [];
  if (customer.data === undefined) {
    return (
      <>
        <NotLoaded what="customer" error={customer.error} onRetry={() => void customer.refetch()} />
        {customer.isPending ? <Skeleton lines={6} label="Loading the customer" /> : null}
      </>
    );
  }
  return (
    <div className={styles.page}>
      <h1>{customer.data.name}</h1>
      <div className={styles.two}>
        <CustomerForm key={customer.data.revision} customer={customer.data} />
        <section className="sheet stack" aria-labelledby="cars">
          <h2 id="cars">Cars</h2>
          {cars.isPending ? <Skeleton lines={2} label="Loading the cars" /> : null}
          <ProblemNote error={cars.error} />
          {cars.data !== undefined && all.length === 0 ? <p className="soft">None in the book.</p> : null}
          <ul className={styles.cars}>
            {all.map((car) => (
              <li key={car.id}>
                <Link href={`/cars/${car.id}`}>
                  <Plate>{car.plate}</Plate> {car.model}
                </Link>
              </li>
            ))}
          </ul>
        </section>
      </div>
    </div>
  );
}

function CustomerForm({ customer }: Readonly<{ customer: Customer }>) {
  const units = useUnits();
  const notices = useNotices();
  const change = useChangeCustomer();
  const draft = useDraft({
    name: customer.name,
    phone: customer.phone ?? '',
    email: customer.email ?? '',
    note: customer.note,
  });
  const submit = (event: FormEvent) => {
    event.preventDefault();
    const read = readValues(draft.values, units, CustomerChange, (from) => ({
      name: from.text('name'),
      phone: from.textOrNull('phone'),
      email: from.textOrNull('email'),
      note: from.text('note'),
    }));
    if ('faults' in read) return draft.fail(read.faults);
    return change.mutate(
      { id: customer.id, revision: customer.revision, change: read.data },
      { onSuccess: () => notices.done('Customer saved.'), onError: draft.failFrom },
    );
  };
  return (
    <form onSubmit={submit} noValidate className="sheet stack" aria-label="Customer">
      <TextField label="Name" {...draft.bind('name')} />
      <TextField label="Phone" type="tel" {...draft.bind('phone')} />
      <TextField label="Email" type="email" {...draft.bind('email')} />
      <TextField label="Note" lines={3} {...draft.bind('note')} />
      <ProblemNote error={change.error} />
      <p>
        <Button type="submit" busy={change.isPending}>
          Save customer
        </Button>
      </p>
    </form>
  );
}
