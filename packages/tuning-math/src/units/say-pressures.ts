import { formatPressureBound } from './format-pressure-bound.js';
import { PRESSURE_UNITS, type PressureUnit } from './pressure-units.js';

/** A figure in kPa, what stands before it in the same unit (`60 to 72 kPa`), and what may stand behind (`± 4`). */
const inKpa =
  /(?:(-?\d+(?:\.\d+)?) (to|and|±) )?(-?\d+(?:\.\d+)?) kPa(?: ± (\d+(?:\.\d+)?)(?! ?kPa|[\d.]))?(?: or (more|less)\b)?/g;

/**
 * A text of the book in the unit of a person or paper. What is missing, refusals, and what holds a visit up on the board come as
 * text alone, with their pressures in kPa, as the API speaks; every one of them is written anew, a bound rounded to its
 * safe side. Reasons come in pieces: `writeSentence` writes them.
 *
 * @param figure writes a pressure in kPa without its unit
 * @param unit that of the person: what `figure` writes in
 */
export function sayPressures(text: string, figure: (kpa: number) => string, unit: string): string {
  if (unit === 'kPa') return text;
  const boundOf = (kpa: number, side: string) =>
    isPressureUnit(unit) && isSide(side) ? formatPressureBound(kpa, unit, side) : figure(kpa);
  return text.replace(inKpa, (_all, ...found: (string | undefined)[]) => {
    const [before, between, kpa, margin, side] = found;
    const lead = before === undefined ? '' : `${figure(Number(before))} ${between ?? ''} `;
    const tail = margin === undefined ? '' : ` ± ${figure(Number(margin))}`;
    const text = side === undefined ? figure(Number(kpa)) : boundOf(Number(kpa), side);
    return `${lead}${text} ${unit}${tail}${side === undefined ? '' : ` or ${side}`}`;
  });
}

const isPressureUnit = (unit: string): unit is PressureUnit => Object.hasOwn(PRESSURE_UNITS, unit);
const isSide = (side: string): side is 'more' | 'less' => side === 'more' || side === 'less';
