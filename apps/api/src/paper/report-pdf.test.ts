import { describe, expect, it } from 'vitest';
import { readPdf } from './drawing/test-pdf.js';
import { reportExample } from './test-records.js';
import { reportPdf } from './report-pdf.js';

const address = { url: 'http://127.0.0.1:3000/r/a-secret', purpose: 'QR code that opens this report' };
const a4 = { paper: 'a4', pressure: 'kPa' } as const;

describe('reportPdf(report, address, choice)', () => {
  it('is a tagged PDF with a title, figures in words, and every typeface embedded', async () => {
    const pdf = await readPdf(await reportPdf(reportExample, address, a4));
    expect(pdf).toMatchObject({
      title: 'Preset report, visit 231, KVR 418',
      language: 'en-GB',
      isTagged: true,
      claimsUa: true,
      otherFontCount: 0,
    });
    expect(pdf.alts).toEqual([
      'QR code that opens this report: http://127.0.0.1:3000/r/a-secret',
      'Boost in kPa: target 110 ± 4, ceiling 125; 4 pulls: 4 at 109, 5 at 111, 6 at 108, 7 at 112.',
      expect.stringContaining('5 pulls'),
    ]);
  });

  it('puts the cautions before the presets and tells target, proof, use, signature and seal', async () => {
    const { texts } = await readPdf(await reportPdf(reportExample, address, a4));
    const text = texts.join(' ');
    for (const wanted of [
      ...reportExample.cautions,
      'What it is for: Premium fuel, road tyres, any weather. Towing up to 1.5 t.',
      'Choose slot 1 on the controller',
      'Calls up slot 3 for 6 s',
      'Proven by 4 full-load pulls at the settings that are now stored. None passed the ceiling.',
      'While this preset was tuned, the car was looked over after pull 3 (Wed, 25 Nov 2026, ',
      'Ines Marwell',
      'e3b0 c442 98fc 1c14',
      'The seal holds',
    ]) {
      expect(text).toContain(wanted);
    }
    expect(text.match(/looked over/g)).toHaveLength(1);
    expect(text.indexOf('Over-boost can destroy')).toBeLessThan(text.indexOf('Everyday'));
  });

  it('says first of all when the seal does not hold', async () => {
    const { texts } = await readPdf(await reportPdf({ ...reportExample, sealHolds: false }, address, a4));
    const text = texts.join(' ');
    expect(text.indexOf('The seal does not hold')).toBeLessThan(text.indexOf('Before you use full boost'));
    expect(text).not.toContain('The seal holds');
  });

  it('comes on Letter and in bar', async () => {
    const pdf = await readPdf(await reportPdf(reportExample, address, { paper: 'letter', pressure: 'bar' }));
    expect(pdf.size).toEqual([612, 792]);
    expect(pdf.texts.join(' ')).toMatch(/1\.10.±.0\.04.bar/);
  });
});
