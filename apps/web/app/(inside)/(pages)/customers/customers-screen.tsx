'use client';

import Link from 'next/link';
import { useState } from 'react';
import { Button, ButtonLink } from '../../../../components/button/button';
import { Empty, Skeleton } from '../../../../components/marks/marks';
import { ProblemNote } from '../../../../components/marks/problem-note';
import { useSettled } from '../../../../components/form/use-settled';
import { SearchHead } from '../../../../components/list/search-head';
import { noneIf } from '../../../../components/list/none-if';
import { useCustomers } from '../../../../queries/customers/use-customers';

/** Who is this customer, and which cars are theirs? */
export function CustomersScreen() {
  const [text, setText] = useState('');
  const customers = useCustomers(useSettled(text.trim()));
  const all = customers.data?.pages.flatMap((page) => page.items) ?? [];
  return (
    <div className="stack">
      <SearchHead
        title="Customers"
        label="Find a customer"
        hint="Name, phone or email"
        text={text}
        onText={setText}
      >
        <ButtonLink href="/intake" kind="act">
          Take in a car
        </ButtonLink>
      </SearchHead>
      <ProblemNote error={customers.error} onRetry={() => void customers.refetch()} />
      {customers.isPending ? <Skeleton lines={6} label="Loading the customers" /> : null}
      {customers.data !== undefined && all.length === 0 ? (
        <Empty title={text === '' ? 'No customer is in the book yet.' : `Nobody is found by “${text}”.`}>
          <p>Customers come into the book when a car is taken in.</p>
        </Empty>
      ) : null}
      {all.length === 0 ? null : (
        <div className="sheet scroll">
          <table className="stacks">
            <thead>
              <tr>
                <th scope="col">Name</th>
                <th scope="col">Phone</th>
                <th scope="col">Email</th>
                <th scope="col" className="n">
                  Cars
                </th>
              </tr>
            </thead>
            <tbody>
              {all.map((customer) => (
                <tr key={customer.id}>
                  <td>
                    <Link href={`/customers/${customer.id}`}>{customer.name}</Link>
                  </td>
                  <td data-none={noneIf(customer.phone === null)}>{customer.phone ?? '–'}</td>
                  <td data-none={noneIf(customer.email === null)}>{customer.email ?? '–'}</td>
                  <td className="n">
                    {customer.carCount}
                    <span className="onStack"> {customer.carCount === 1 ? 'car' : 'cars'}</span>
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      )}
      {customers.hasNextPage ? (
        <Button busy={customers.isFetchingNextPage} onClick={() => void customers.fetchNextPage()}>
          Show more
        </Button>
      ) : null}
    </div>
  );
}
