'use client';

import Link from 'next/link';
import { useState } from 'react';
import { Button, ButtonLink } from '../../../../components/button/button';
import { useSettled } from '../../../../components/form/use-settled';
import { SearchHead } from '../../../../components/list/search-head';
import { Empty, Plate, Skeleton } from '../../../../components/marks/marks';
import { ProblemNote } from '../../../../components/marks/problem-note';
import { useCars } from '../../../../queries/cars/use-cars';

/** Which cars does the book know? */
export function CarsScreen() {
  const [text, setText] = useState('');
  const cars = useCars({ q: useSettled(text.trim()) });
  const all = cars.data?.pages.flatMap((page) => page.items) ?? [];
  return (
    <div className="stack">
      <SearchHead
        title="Cars"
        label="Find a car"
        hint="Plate, model, VIN or customer"
        text={text}
        onText={setText}
      >
        <ButtonLink href="/intake" kind="act">
          Take in a car
        </ButtonLink>
      </SearchHead>
      <ProblemNote error={cars.error} onRetry={() => void cars.refetch()} />
      {cars.isPending ? <Skeleton lines={6} label="Loading the cars" /> : null}
      {cars.data !== undefined && all.length === 0 ? (
        <Empty title={text === '' ? 'No car is in the book yet.' : `No car is found by “${text}”.`}>
          <p>Cars come into the book when they are taken in.</p>
        </Empty>
      ) : null}
      {all.length === 0 ? null : (
        <div className="sheet scroll">
          <table className="stacks">
            <thead>
              <tr>
                <th scope="col">Plate</th>
                <th scope="col">Car</th>
                <th scope="col">Customer</th>
                <th scope="col">Controller</th>
              </tr>
            </thead>
            <tbody>
              {all.map((car) => (
                <tr key={car.id}>
                  <td>
                    <Link href={`/cars/${car.id}`}>
                      <Plate>{car.plate}</Plate>
                    </Link>
                  </td>
                  <td>
                    {car.model}
                    {car.modelYear === null ? '' : `, ${car.modelYear}`}
                  </td>
                  <td>
                    <Link href={`/customers/${car.customerId}`}>{car.customerName}</Link>
                  </td>
                  <td className="soft">{car.controllerName ?? 'no controller chosen yet'}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      )}
      {cars.hasNextPage ? (
        <Button busy={cars.isFetchingNextPage} onClick={() => void cars.fetchNextPage()}>
          Show more
        </Button>
      ) : null}
    </div>
  );
}
