import type { LogChannel } from '@pullbook/contracts';
import { expect, it } from 'vitest';
import { draftFault, draftOfChannels, draftOfReading, readingOf, withQuantity } from './reading-draft';

const channel = (
  header: string,
  quantity: string,
  unit: string,
  more: Partial<LogChannel> = {},
): LogChannel => ({
  header,
  quantity,
  unit,
  occurrence: 0,
  reference: null,
  basis: 'name-and-unit',
  certain: true,
  samples: [],
  lowest: null,
  highest: null,
  ...more,
});

it('tells what was recognised, and a boost column that is absolute as manifold pressure', () => {
  const draft = draftOfChannels(
    [
      channel('T', 'time', 's'),
      channel('Boost abs', 'boost-pressure', 'psi', { reference: 'absolute' }),
      channel('X', 'unknown', 'none'),
    ],
    null,
  );
  expect(readingOf(draft).columns).toEqual([
    { header: 'T', occurrence: 0, quantity: 'time', unit: 's' },
    { header: 'Boost abs', occurrence: 0, quantity: 'manifold-absolute-pressure', unit: 'psi' },
  ]);
});

it('tells a column that is put aside, and asks for the unit of a pressure', () => {
  const draft = draftOfChannels([channel('T', 'time', 's'), channel('P', 'unknown', 'none')], null);
  const [time, pressure] = draft.columns;
  if (time === undefined || pressure === undefined) throw new Error('two columns went in');
  const open = {
    ...draft,
    columns: [withQuantity(time, 'unknown'), withQuantity(pressure, 'boost-pressure')],
  };
  expect(draftFault(open)).toContain('unit of “P”');
  const told = {
    ...open,
    columns: [open.columns[0] ?? time, withQuantity(pressure, 'boost-pressure', 'bar')],
  };
  expect(draftFault(told)).toBeNull();
  expect(readingOf(told).columns.map(({ quantity, unit }) => [quantity, unit])).toEqual([
    ['unknown', 'none'],
    ['boost-pressure', 'bar'],
  ]);
});

it('refuses two columns that hold the same, and a rate that is none', () => {
  const twice = draftOfChannels([channel('A', 'gear', 'gear'), channel('B', 'gear', 'gear')], null);
  expect(draftFault(twice)).toContain('“B”');
  const one = draftOfChannels([channel('A', 'gear', 'gear')], null);
  expect(draftFault({ ...one, sampleRateHz: '0' })).toContain('Rows a second');
  expect(readingOf({ ...one, sampleRateHz: '12,5' }).sampleRateHz).toBe(12.5);
});

it('gives a kept recipe back as it was kept, what it ignores included', () => {
  const reading = {
    columns: [
      { header: 'A', occurrence: 1, quantity: 'time', unit: 'ms' } as const,
      { header: 'B', occurrence: 0, quantity: 'unknown', unit: 'none' } as const,
    ],
    sampleRateHz: null,
    delimiter: ';' as const,
    decimalMark: null,
  };
  expect(readingOf(draftOfReading(['A', 'A', 'B', 'C'], reading))).toEqual(reading);
});
