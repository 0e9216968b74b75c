import type { Role, SearchAnswer } from '@pullbook/contracts';
import { placesOf } from '../shell/places';
import { stageNames } from '../stage/stage-names';
import { words, type Word } from '../help/words';
import { visitNumber } from '../visit/visit-number';

/** One line of the finder: what it is called, what else tells it apart, where it leads. */
export interface Entry {
  readonly href: string;
  readonly plate?: string;
  readonly name: string;
  readonly fact: string;
}

export interface EntryGroup {
  readonly title: string;
  readonly entries: readonly Entry[];
}

const deeds = [
  { href: '/intake', name: 'Take in a car', fact: 'customer, car and wishes' },
  { href: '/words', name: 'Words', fact: 'what each word means, and its unit' },
];
const mostWords = 6;

/** What the finder lists for what was typed: records as the server found them, and the pages whose name has it. */
export function entriesOf(
  answer: SearchAnswer | undefined,
  typed: string,
  role: Role,
): readonly EntryGroup[] {
  const { visits, cars, customers } = answer ?? { visits: [], cars: [], customers: [] };
  const groups: readonly EntryGroup[] = [
    {
      title: 'Visits',
      entries: visits.map((one) => ({
        href: `/visits/${one.id}`,
        plate: one.plate,
        name: `${one.model}, ${one.customerName}`,
        fact: `${visitNumber(one.number)} · ${stageNames[one.stage]}`,
      })),
    },
    {
      title: 'Cars',
      entries: cars.map((one) => ({
        href: `/cars/${one.id}`,
        plate: one.plate,
        name: one.model,
        fact: one.customerName,
      })),
    },
    {
      title: 'Customers',
      entries: customers.map((one) => ({
        href: `/customers/${one.id}`,
        name: one.name,
        fact: one.phone ?? 'no telephone',
      })),
    },
    { title: 'Pages', entries: pagesNamed(typed, role) },
    { title: 'Words', entries: wordsNamed(typed) },
  ];
  return groups.filter(({ entries }) => entries.length > 0);
}

/** Words whose name has what was typed; none before anything is. */
function wordsNamed(typed: string): readonly Entry[] {
  const asked = typed.trim().toLowerCase();
  if (asked === '') return [];
  const all: ReadonlyArray<readonly [string, Word]> = Object.entries(words);
  return all
    .filter(([, { name }]) => name.toLowerCase().includes(asked))
    .slice(0, mostWords)
    .map(([key, { name }]) => ({ href: `/words#${key}`, name, fact: 'what the word means' }));
}

function pagesNamed(typed: string, role: Role): readonly Entry[] {
  const asked = typed.trim().toLowerCase();
  const pages = [...placesOf(role).map(({ href, name, about }) => ({ href, name, fact: about })), ...deeds];
  return pages.filter(({ name, fact }) => `${name} ${fact}`.toLowerCase().includes(asked));
}
