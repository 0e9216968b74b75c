import type { CeilingRow, EngineSheet, PresetUnderCeiling } from '@pullbook/contracts';
import { Tag } from '../../../../../../components/marks/marks';
import { useUnits, type PersonsUnits } from '../../../../../../components/units/use-units';
import styles from './engine.module.css';

const states = {
  binding: { shape: '■', word: 'binds' },
  counts: { shape: '□', word: 'counts' },
  estimate: { shape: '△', word: 'estimate' },
  unknown: { shape: '–', word: 'not known' },
} as const;

/** The ceiling builder: which limit binds, by how much, and how the presets stand under it. */
export function CeilingPart({ sheet }: Readonly<{ sheet: EngineSheet }>) {
  const units = useUnits();
  const binding = sheet.limits.find(({ state }) => state === 'binding');
  const highest = Math.max(1, ...sheet.limits.map(({ statedKpa }) => statedKpa ?? 0));
  return (
    <section className="sheet stack" aria-labelledby="ceiling">
      <h2 id="ceiling">Ceiling</h2>
      {binding === undefined || sheet.ceilingKpa === null ? (
        <p>
          <b>No limit of this car is known,</b> so nothing says how high a ceiling may stand. Enter what you
          know on the car’s page, or enough engine data here.
        </p>
      ) : (
        <p className={styles.answer}>
          <span className={styles.big}>{units.write(sheet.ceilingKpa)}</span>
          <span>
            No ceiling may stand above it. What binds: <b>{binding.name}</b>, {sayStated(binding, units)}.
          </span>
        </p>
      )}
      <ul className={styles.limits}>
        {sheet.limits.map((row) => (
          <LimitRow key={row.cause} row={row} highestKpa={highest} units={units} />
        ))}
      </ul>
      {sheet.presets.length === 0 ? null : (
        <>
          <h3>Presets under it</h3>
          <ul className={styles.lines}>
            {sheet.presets.map((preset) => (
              <li key={preset.presetId}>
                <b className="grow">{preset.name}</b>
                <span>{sayPreset(preset, units)}</span>
              </li>
            ))}
          </ul>
        </>
      )}
    </section>
  );
}

interface LimitRowProps {
  readonly row: CeilingRow;
  readonly highestKpa: number;
  readonly units: PersonsUnits;
}

function LimitRow({ row, highestKpa, units }: LimitRowProps) {
  const { shape, word } = states[row.state];
  return (
    <li data-state={row.state}>
      <span className="row">
        <b className="grow">{row.name}</b>
        <Tag shape={shape}>{word}</Tag>
        <span className={styles.figure}>{row.limitKpa === null ? '' : units.write(row.limitKpa)}</span>
      </span>
      {row.limitKpa === null ? null : (
        <span className={styles.bar} aria-hidden="true">
          <span style={{ width: `${(100 * row.limitKpa) / highestKpa}%` }} />
        </span>
      )}
      <span className="soft small">{sayWhy(row, units)}</span>
    </li>
  );
}

function sayStated({ statedKpa, marginKpa }: CeilingRow, units: PersonsUnits): string {
  const stated = units.write(statedKpa ?? 0);
  return marginKpa === 0 ? stated : `${stated} less ${units.write(marginKpa)}`;
}

function sayWhy(row: CeilingRow, units: PersonsUnits): string {
  const { state, why, open, headroomKpa, marginKpa } = row;
  if (state === 'unknown') return sayUnknown(why, open);
  const stated = marginKpa === 0 ? '' : `${sayStated(row, units)}: `;
  const parts = [capital(`${stated}${why}.`)];
  if (headroomKpa !== null && headroomKpa > 0) parts.push(`${units.write(headroomKpa)} above what binds.`);
  return [...parts, ...(state === 'estimate' ? sayEstimate(row, units) : [])].join(' ');
}

function sayUnknown(why: string, open: readonly string[]): string {
  const isTold = open.length === 0 || why.startsWith('not known');
  return isTold ? `${capital(why)}.` : `Missing: ${open.join(', ')}.`;
}

function sayEstimate({ headroomKpa, open }: CeilingRow, units: PersonsUnits): string[] {
  const isLower = headroomKpa !== null && headroomKpa < 0;
  return [
    isLower ? `${units.write(-headroomKpa)} below what binds: look into it before you go there.` : '',
    open.length === 0 ? 'It does not bind.' : `It does not bind while assumed: ${open.join(', ')}.`,
  ].filter((part) => part !== '');
}

function sayPreset({ targetKpa, ceilingKpa, headroomKpa }: PresetUnderCeiling, units: PersonsUnits): string {
  const target = targetKpa === null ? 'no target yet' : `target ${units.write(targetKpa)}`;
  if (ceilingKpa === null) return `${target}, no ceiling yet`;
  const goal = `${target}, ceiling ${units.write(ceilingKpa)}`;
  if (headroomKpa === null) return goal;
  if (headroomKpa < 0) return `▲ ${goal}: ${units.write(-headroomKpa)} too high, lower it`;
  return headroomKpa === 0 ? `${goal}: right at it` : `${goal}: ${units.write(headroomKpa)} left`;
}

const capital = (text: string) => `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
