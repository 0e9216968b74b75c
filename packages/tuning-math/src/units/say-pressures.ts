/** A figure in kPa, what stands before it in the same unit (`60 to 72 kPa`), and what may stand behind (`± 4`). */
const inKpa =
  /(?:(-?\d+(?:\.\d+)?) (to|and|±) )?(-?\d+(?:\.\d+)?) kPa(?: ± (\d+(?:\.\d+)?)(?! ?kPa|[\d.]))?/g;

/**
 * A text of the book in the unit of a person or paper. Reasons, what is missing and refusals come with their pressures
 * in kPa, as the API speaks; every one of them is written anew.
 *
 * @param figure writes a pressure in kPa without its unit
 * @param unit that of the person: what `figure` writes in
 */
export function sayPressures(text: string, figure: (kpa: number) => string, unit: string): string {
  if (unit === 'kPa') return text;
  return text.replace(inKpa, (_all, ...found: (string | undefined)[]) => {
    const [before, between, kpa, margin] = found;
    const lead = before === undefined ? '' : `${figure(Number(before))} ${between ?? ''} `;
    const tail = margin === undefined ? '' : ` ± ${figure(Number(margin))}`;
    return `${lead}${figure(Number(kpa))} ${unit}${tail}`;
  });
}
