import type { Role } from '@pullbook/contracts';

interface Place {
  readonly href: string;
  readonly name: string;
  /** What one goes there for. */
  readonly about: string;
}

const places: readonly Place[] = [
  { href: '/board', name: 'Board', about: 'where every car is' },
  { href: '/customers', name: 'Customers', about: 'people and their cars' },
  { href: '/cars', name: 'Cars', about: 'data, presets, history' },
  { href: '/logs', name: 'Logs', about: 'a day’s files' },
  { href: '/controllers', name: 'Controllers', about: 'what each kind can do' },
  { href: '/practice', name: 'Practice', about: 'a car that cannot break' },
  { href: '/workshop', name: 'Workshop', about: 'how we work here' },
];

/** Logs, practice and the workshop's ways are no work of the front desk. */
function isFor(href: string, role: Role): boolean {
  return role !== 'desk' || !['/logs', '/practice', '/workshop'].includes(href);
}

/** The places of the dashboard that a person of this role works at. */
export const placesOf = (role: Role): readonly Place[] => places.filter(({ href }) => isFor(href, role));
