import { describe, expect, it } from 'vitest';
import type { ChannelRecipe } from '../channel-recipe.js';
import { analyseLog } from '../analyse-log.js';
import { matchRecipe } from './match-recipe.js';
import { readLogHead } from './read-log-head.js';

const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);
const known = (id: string, text: string, recipe: ChannelRecipe = { columns: [] }) => ({
  id,
  shape: readLogHead(bytesOf(text), recipe).shape,
  recipe,
});
const idFor = (text: string, recipes: ReturnType<typeof known>[]): string | null =>
  matchRecipe(bytesOf(text), recipes)?.id ?? null;

const LOG = 'When,P1,Rev\n0.00,12.1,3000\n0.02,12.4,3010\n0.04,12.8,3020\n';

describe('matchRecipe', () => {
  it('finds the recipe of a log with the same headers, whatever its samples and lines before them', () => {
    const recipes = [known('other', LOG.replace('P1', 'P2')), known('this', LOG)];
    expect(idFor('Car,blue\n' + LOG.replaceAll('12.', '3.'), recipes)).toBe('this');
    expect(idFor(LOG.replace('When,P1', ' WHEN, p1 '), recipes)).toBe('this');
  });

  it.each([
    ['a column more', LOG.replaceAll('\n', ',1\n').replace(',1\n', ',X\n')],
    ['columns in another order', LOG.replace('P1,Rev', 'Rev,P1')],
    ['another unit in the header', LOG.replace('P1', 'P1 [psi]')],
    ['a unit row', LOG.replace('Rev\n', 'Rev\ns,bar,rpm\n')],
    ['no header', LOG.slice(LOG.indexOf('\n') + 1)],
  ])('finds none for %s', (_, text) => {
    expect(idFor(text, [known('this', LOG)])).toBeNull();
  });

  it('tells two unit rows apart', () => {
    const inBar = LOG.replace('Rev\n', 'Rev\ns,bar,rpm\n');
    const inPsi = inBar.replace('bar', 'psi');
    expect(idFor(inPsi, [known('bar', inBar), known('psi', inPsi)])).toBe('psi');
  });

  it('looks under the delimiter that the recipe was told', () => {
    const odd = 'When|P1;P2|Rev\n0,5|1;2|3000\n0,6|1;2|3000\n0,7|1;2|3000\n';
    const recipe: ChannelRecipe = { columns: [], delimiter: '|', decimalMark: ',' };
    expect(readLogHead(bytesOf(odd), recipe).columns.map(({ header }) => header)).toEqual([
      'When',
      'P1;P2',
      'Rev',
    ]);
    expect(idFor(odd, [known('odd', odd, recipe)])).toBe('odd');
  });

  it('finds none for what is no table', () => {
    expect(idFor('nothing here', [known('this', LOG)])).toBeNull();
    expect(matchRecipe(new Uint8Array(0), [known('this', LOG)])).toBeNull();
  });
});

/** Idle, then a pull; pressure in psi and engine speed under names that nobody would know. */
function pull(header: string, cells: (timeS: number, boostKpa: number, rpm: number) => string): string {
  const rows = Array.from({ length: 500 }, (_, row) => {
    const timeS = row / 50;
    const sinceS = timeS - 3;
    const boostKpa = sinceS < 0 ? -40 : 120 * (1 - Math.exp(-sinceS / 0.5));
    return cells(timeS, boostKpa, sinceS < 0 ? 1500 : 2000 + 700 * sinceS);
  });
  return [header, ...rows].join('\n');
}
const PSI = 6.894757;

describe('analyseLog with a channel recipe', () => {
  const text = pull('A,B,C', (timeS, boost, rpm) => `${timeS},${(boost / PSI).toFixed(3)},${rpm.toFixed(0)}`);
  const columns = [
    { header: 'A', quantity: 'time', unit: 's' },
    { header: 'B', quantity: 'boost-pressure', unit: 'psi' },
    { header: 'C', quantity: 'engine-speed', unit: 'rpm' },
  ] as const;

  it('reads a log that nothing else makes readable, and calls its columns told', () => {
    expect(() => analyseLog(text)).toThrow('no column of boost');
    const { pulls, channels } = analyseLog(text, { recipe: { columns } });
    expect(pulls).toHaveLength(1);
    expect(pulls[0]?.peakKpa).toBeCloseTo(120, 0);
    expect(channels.map(({ basis, certain }) => [basis, certain])).toEqual(Array(3).fill(['recipe', true]));
    // First, middle and last of the rows that the head holds: 2000 + 700 * 0.98, 2000 + 700 * 4.96 r/min.
    expect(channels[2]?.samples).toEqual(['1500', '2686', '5472']);
  });

  it('takes the rate of the rows where the time is told to be none', () => {
    const told = [{ header: 'A', quantity: 'unknown', unit: 'none' } as const, ...columns.slice(1)];
    const { pulls, sampleRateHz } = analyseLog(text, { recipe: { columns: told, sampleRateHz: 25 } });
    expect(sampleRateHz).toBeCloseTo(25, 6);
    expect((pulls[0]?.endS ?? 0) - (pulls[0]?.startS ?? 0)).toBeGreaterThan(10);
  });

  it('ignores a column that recognition would have taken', () => {
    const named = text.replace('A,B,C', 'Time (s),Boost (psi),Boost sensor 2 (psi)');
    const recipe = {
      columns: [
        { header: 'Boost (psi)', quantity: 'unknown', unit: 'none' },
        { header: 'Boost sensor 2 (psi)', quantity: 'boost-pressure', unit: 'mbar' },
      ],
    } as const;
    expect(analyseLog(named, { recipe }).channels.map(({ quantity }) => quantity)).toEqual([
      'time',
      'unknown',
      'boost-pressure',
    ]);
  });

  it('doubts a told unit that the values cannot be in: the logger may have been set anew', () => {
    const inKpa = pull('A,B,C', (timeS, boost, rpm) => `${timeS},${boost.toFixed(1)},${rpm.toFixed(0)}`);
    const { pulls, warnings } = analyseLog(inKpa, { recipe: { columns } });
    expect(warnings.map(({ code }) => code)).toContain('pressure-doubtful');
    expect(pulls.filter(({ usable }) => usable)).toEqual([]);
  });

  it('refuses a unit that the quantity cannot have, and names it', () => {
    const wrong = [...columns.slice(0, 2), { header: 'C', quantity: 'engine-speed', unit: 'psi' } as const];
    expect(() => analyseLog(text, { recipe: { columns: wrong } })).toThrow('which engine-speed cannot have');
  });
});
