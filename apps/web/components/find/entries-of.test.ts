import type { SearchAnswer } from '@pullbook/contracts';
import { expect, test } from 'vitest';
import { entriesOf } from './entries-of';

const found: SearchAnswer = {
  visits: [
    { id: 'v', number: 7, plate: 'QB 12', model: 'Coupe', customerName: 'Nora Ålund', stage: 'on-test' },
  ],
  cars: [{ id: 'c', plate: 'QB 12', model: 'Coupe', customerName: 'Nora Ålund' }],
  customers: [{ id: 'p', name: 'Nora Ålund', phone: null }],
};
const names = (typed: string, role: 'owner' | 'desk') =>
  entriesOf(undefined, typed, role).flatMap(({ entries }) => entries.map(({ name }) => name));

test('entriesOf tells visits, cars and customers apart and leads to each', () => {
  const lines = entriesOf(found, 'qb', 'tuner').map(({ title, entries }) => [title, entries]);
  expect(lines).toEqual([
    ['Visits', [{ href: '/visits/v', plate: 'QB 12', name: 'Coupe, Nora Ålund', fact: '0007 · On test' }]],
    ['Cars', [{ href: '/cars/c', plate: 'QB 12', name: 'Coupe', fact: 'Nora Ålund' }]],
    ['Customers', [{ href: '/customers/p', name: 'Nora Ålund', fact: 'no telephone' }]],
  ]);
});

test('entriesOf lists the pages of the role before anything is typed, and those with the word after', () => {
  expect(names('', 'owner')).toContain('Workshop');
  expect(names('', 'desk')).not.toContain('Workshop');
  expect(names('', 'desk')).not.toContain('Logs');
  expect(names(' BOARD', 'desk')).toEqual(['Board']);
  expect(names('take', 'desk')).toEqual(['Take in a car']);
  expect(names('words', 'desk')).toEqual(['Words']);
  expect(names('nothing such', 'owner')).toEqual([]);
});

test('entriesOf leads to the meaning of a word that was typed', () => {
  const [group, ...others] = entriesOf(undefined, 'gate h', 'desk');
  expect(others).toEqual([]);
  expect(group).toMatchObject({ title: 'Words', entries: [{ href: '/words#gate_hold', name: 'Gate hold' }] });
});
