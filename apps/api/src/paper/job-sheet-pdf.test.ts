import { amount, sentence } from '@pullbook/tuning-math';
import { describe, expect, it } from 'vitest';
import { readPdf } from './drawing/test-pdf.js';
import { sheetExample } from './test-records.js';
import { jobSheetPdf } from './job-sheet-pdf.js';

const a4 = { paper: 'a4', pressure: 'kPa' } as const;

describe('jobSheetPdf(sheet, choice)', () => {
  it('is a tagged PDF in English with a title, that claims PDF/UA and embeds every typeface', async () => {
    const pdf = await readPdf(await jobSheetPdf(sheetExample, a4));
    expect(pdf).toMatchObject({
      title: 'Job sheet, visit 231, KVR 418',
      language: 'en-GB',
      isTagged: true,
      claimsUa: true,
      otherFontCount: 0,
    });
    expect(pdf.embeddedFontCount).toBeGreaterThan(1);
    for (const role of ['Document', 'H1', 'H2', 'P', 'L', 'LI', 'Table', 'TR', 'TH', 'TD', 'Figure']) {
      expect(pdf.roles).toContain(role);
    }
  });

  it('says in words what its pictures show, the QR code with its address', async () => {
    const { alts } = await readPdf(await jobSheetPdf(sheetExample, a4));
    expect(alts[0]).toBe(`QR code that opens this visit: ${sheetExample.visitUrl}`);
    expect(alts[1]).toContain('target 110 ± 4, ceiling 125, base 62; 4 pulls: 1 at 70');
    expect(alts[2]).toContain('Peak boost in kPa over duty in %: target 110 ± 4, ceiling 125');
    expect(alts[3]).toContain('no ceiling agreed yet');
  });

  it('prints who, what, when, the cautions, the readiness check and all pulls', async () => {
    const { texts } = await readPdf(await jobSheetPdf(sheetExample, a4));
    const text = texts.join(' ');
    for (const wanted of [
      'Job sheet, visit 231',
      'KVR 418',
      'Estate, 2.0 turbo, 2011',
      'Renáta Żołądek',
      '+00 555 0142',
      'More pull for towing up the pass',
      'Promised for',
      'Three-slot box with knob',
      'Loop open',
      'void: throttle lifted at 3.1 s',
      'agree before any pull',
      ...sheetExample.cautions,
      ...sheetExample.readiness.map(({ question }) => question),
    ]) {
      expect(text).toContain(wanted);
    }
  });

  it('numbers its pages and names visit and plate at the foot of each', async () => {
    const { texts, pageCount } = await readPdf(await jobSheetPdf(sheetExample, a4));
    expect(pageCount).toBeGreaterThan(1);
    texts.forEach((text, index) => {
      expect(text).toContain(`page ${index + 1} of ${pageCount}`);
      expect(text).toContain('visit 231 · KVR 418');
    });
  });

  it('comes on A4 and on Letter, in the unit that was asked for', async () => {
    const letter = await readPdf(await jobSheetPdf(sheetExample, { paper: 'letter', pressure: 'psi' }));
    expect(letter.size).toEqual([612, 792]);
    expect(letter.texts.join(' ')).toContain('Target, psi 16.0 ± 0.6');
    expect((await readPdf(await jobSheetPdf(sheetExample, a4))).size).toEqual([595, 842]);
  });

  it('leaves room to write where nothing is known yet', async () => {
    const bare = { ...sheetExample, presets: [], wishes: '', bay: null, tunerName: null, controller: null };
    const { texts } = await readPdf(await jobSheetPdf(bare, a4));
    const text = texts.join(' ');
    expect(text).toContain('Preset to be agreed');
    expect(text).toContain('Name and purpose');
    expect(text).toContain('Notes');
  });

  it('goes on with the header of the table on the next page when there are many pulls', async () => {
    const [preset] = sheetExample.presets;
    if (!preset) throw new Error('the example has a preset');
    const pulls = Array.from({ length: 80 }, (_, index) => ({
      number: index + 1,
      dutyPct: 20,
      gear: 4,
      peakKpa: 80 + index / 10,
      isVoid: false,
      verdict: sentence`usable`,
    }));
    const long = { ...sheetExample, presets: [{ ...preset, pulls, strip: { ...preset.strip, pulls } }] };
    const { texts, pageCount } = await readPdf(await jobSheetPdf(long, a4));
    expect(pageCount).toBeGreaterThan(3);
    expect(texts[2]).toContain('Duty % Gear Peak kPa');
    expect(texts.join(' ')).toContain('87.9');
  });

  it('prints the pressures of a verdict in the unit asked for, and what a person wrote as it was written', async () => {
    const [preset] = sheetExample.presets;
    const [pull] = preset?.pulls ?? [];
    if (!preset || !pull) throw new Error('the example has a preset with a pull');
    // 100 kPa = 14.50 psi: NIST SP 811, appendix B.8.
    const verdicts = [
      sentence`usable: past ${amount(100, 'kPa')}.`,
      sentence`void: ${'gauge stuck at 90 kPa'}`,
    ];
    const pulls = verdicts.map((verdict) => ({ ...pull, verdict }));
    const sheet = { ...sheetExample, presets: [{ ...preset, pulls }] };
    const text = (await readPdf(await jobSheetPdf(sheet, { ...a4, pressure: 'psi' }))).texts.join(' ');
    expect(text).toContain('usable: past 14.5 psi.');
    expect(text).toContain('void: gauge stuck at 90 kPa');
  });

  it('prints names in scripts that the house typeface lacks, and a box for what no typeface has', async () => {
    const foreign = { ...sheetExample, customerName: 'Ирина Σοφία 車\u202Egnp.exe', wishes: 'x'.repeat(400) };
    const { texts } = await readPdf(await jobSheetPdf(foreign, a4));
    expect(texts[0]).toContain('Ирина Σοφία □gnp.exe');
  });

  it('makes the same file from the same sheet', async () => {
    const [first, second] = [await jobSheetPdf(sheetExample, a4), await jobSheetPdf(sheetExample, a4)];
    expect(first.equals(second)).toBe(true);
  });
});
