import { expect, test } from 'vitest';
import { addressOf, anyOrder, readNumber, readOrder } from './read-order';

const order = (query: string) => readOrder(new URLSearchParams(query));

test('readOrder takes a car from an address and gives null for one that there is not', () => {
  expect(order('level=lively&car=4821')).toEqual({ level: 'lively', number: 4821 });
  for (const query of [
    '',
    'level=lively',
    'car=7',
    'level=other&car=7',
    'level=calm&car=0',
    'level=calm&car=7x',
  ])
    expect(order(query), query).toBeNull();
});

test('addressOf leads back to the same car', () => {
  const car = { level: 'doubtful', number: 17 } as const;
  expect(order(addressOf(car).split('?')[1] ?? '')).toEqual(car);
});

test('readNumber takes whole numbers from 1 to 9999', () => {
  expect([' 12 ', '9999', '0', '10000', '1.5', '-3', ''].map(readNumber)).toEqual([
    12,
    9999,
    null,
    null,
    null,
    null,
    null,
  ]);
});

test('anyOrder names a car that there is', () => {
  for (let n = 0; n < 50; n += 1)
    expect(readOrder(new URLSearchParams(addressOf(anyOrder('calm')).split('?')[1]))).not.toBeNull();
});
