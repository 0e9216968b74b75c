import { convertPressure } from './convert-pressure.js';
import { PRESSURE_UNITS, type PressureUnit } from './pressure-units.js';

/** A figure in kPa, what stands before it in the same unit (`60 to 72 kPa`), and what may stand behind (`± 4`). */
const inKpa =
  /(?:(-?\d+(?:\.\d+)?) (to|and|±) )?(-?\d+(?:\.\d+)?) kPa(?: ± (\d+(?:\.\d+)?)(?! ?kPa|[\d.]))?(?: or (more|less)\b)?/g;

/**
 * A text of the book in the unit of a person or paper. Reasons, what is missing and refusals come with their pressures
 * in kPa, as the API speaks; every one of them is written anew. A bound is rounded to its safe side, so that who sets
 * just what is written keeps to it: `136 kPa or more` is 19.8 psi or more, although 19.7 psi is nearer.
 *
 * @param figure writes a pressure in kPa without its unit
 * @param unit that of the person: what `figure` writes in
 */
export function sayPressures(text: string, figure: (kpa: number) => string, unit: string): string {
  if (unit === 'kPa') return text;
  return text.replace(inKpa, (_all, ...found: (string | undefined)[]) => {
    const [before, between, kpa, margin, side] = found;
    const lead = before === undefined ? '' : `${figure(Number(before))} ${between ?? ''} `;
    const tail = margin === undefined ? '' : ` ± ${figure(Number(margin))}`;
    const text = side === undefined ? figure(Number(kpa)) : boundOf(Number(kpa), side, figure, unit);
    return `${lead}${text} ${unit}${tail}${side === undefined ? '' : ` or ${side}`}`;
  });
}

/** Farther than any figure is rounded, and how finely the next one is looked for, kPa. */
const FARTHEST_KPA = 4;
const STEP_KPA = 0.05;
/** What is lost in converting is no pressure. */
const EQUAL_KPA = 1e-9;

/** The nearest figure that does not fall short of a bound. */
function boundOf(kpa: number, side: string, figure: (kpa: number) => string, unit: string): string {
  if (!isPressureUnit(unit)) return figure(kpa);
  const sign = side === 'more' ? 1 : -1;
  for (let offKpa = 0; offKpa <= FARTHEST_KPA; offKpa += STEP_KPA) {
    const text = figure(kpa + sign * offKpa);
    const readKpa = convertPressure(Number(text.replace('−', '-')), unit, 'kPa');
    if (sign * (readKpa - kpa) >= -EQUAL_KPA) return text;
  }
  return figure(kpa);
}

const isPressureUnit = (unit: string): unit is PressureUnit => Object.hasOwn(PRESSURE_UNITS, unit);
