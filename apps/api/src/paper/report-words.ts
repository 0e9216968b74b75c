import type { Report, ReportPreset, ReportPull } from '@pullbook/contracts';
import type { StripFigures } from '@pullbook/pictures';
import { sayPressures } from '@pullbook/tuning-math';
import type { PaperFormat } from './pressure-format.js';
import { writeInstantAndZone } from './write-instant.js';

/** What page and paper say of one preset, so that both say the same. */
export interface PresetWords {
  readonly heading: string;
  readonly purpose: string;
  readonly use: string;
  readonly facts: readonly { readonly label: string; readonly value: string; readonly note: string }[];
  /** What the proof rests on, in whole sentences. */
  readonly proof: string;
  /** That the car was looked over and found sound, as a whole sentence; empty where it never was. */
  readonly lookedOver: string;
  readonly strip: StripFigures;
  readonly pulls: readonly ReportPull[];
}

export function presetWords(report: Report, preset: ReportPreset, format: PaperFormat): PresetWords {
  const pulls = report.pulls.filter(
    (pull) => pull.presetId === preset.presetId && !pull.isVoid && pull.dutyPct === preset.dutyPct,
  );
  const { targetKpa, toleranceKpa, ceilingKpa } = preset;
  return {
    heading: preset.name,
    purpose: preset.purpose.trim(),
    use: howToUse(preset),
    facts: factsOf(preset, format),
    proof: proofOf(preset, pulls.length, format),
    lookedOver: lookedOver(preset, report.paperHeader.timeZone),
    strip: { baseKpa: null, targetKpa, toleranceKpa, ceilingKpa, pulls, next: null },
    pulls,
  };
}

/** 'Slot 2', or 'Slot 3, timed override, 6 s'. */
export function slotWords({ slot, kind, holdSeconds }: ReportPreset): string {
  if (kind === 'standing') return `Slot ${slot}`;
  return `Slot ${slot}, timed override${holdSeconds === null ? '' : `, ${holdSeconds} s`}`;
}

/** The seal's check sum in groups of four, easy to read out and to compare. */
export function sealGroups(sealSha256: string): readonly string[] {
  return sealSha256.match(/.{1,4}/g) ?? [];
}

export const sealWords = {
  holds: 'The seal holds: what you read is, to the letter, what was signed.',
  broken:
    'The seal does not hold: these figures are not the ones that were signed. Do not rely on them; call the workshop.',
  how: 'The seal is a check sum (SHA-256) over all that was signed. Compare these groups with the ones on the other copy of this report, printed or on screen: if every group is the same, nothing was changed.',
} as const;

function howToUse(preset: ReportPreset): string {
  if (preset.kind === 'standing') {
    return `Choose slot ${preset.slot} on the controller; it stays until you choose another.`;
  }
  const time = preset.holdSeconds === null ? 'a few seconds' : `${preset.holdSeconds} s`;
  return `Calls up slot ${preset.slot} for ${time}, then the controller goes back to the preset that you chose before. Only where there is room for it.`;
}

function factsOf(preset: ReportPreset, format: PaperFormat): PresetWords['facts'] {
  const { targetKpa, toleranceKpa, ceilingKpa, meanPeakKpa, lowestPeakKpa, highestPeakKpa } = preset;
  const unit = format.unit;
  const facts = [];
  if (targetKpa !== null) {
    const value = `${format.write(targetKpa)}\u00a0±\u00a0${format.write(toleranceKpa)}\u00a0${unit}`;
    facts.push({ label: 'Target', value, note: 'agreed with you' });
  }
  if (meanPeakKpa !== null) {
    facts.push({
      label: isProven(preset) ? 'Proven peak' : 'Mean peak',
      value: `${format.writePeak(meanPeakKpa)}\u00a0${unit}`,
      note: 'on average',
    });
  }
  if (lowestPeakKpa !== null && highestPeakKpa !== null) {
    const value = `${format.writePeak(lowestPeakKpa)} to ${format.writePeak(highestPeakKpa)}\u00a0${unit}`;
    facts.push({ label: 'Spread', value, note: 'lowest and highest pull' });
  }
  if (ceilingKpa !== null) {
    const note = preset.ceilingKept ? 'not passed when it was proven' : 'was passed once';
    facts.push({ label: 'Ceiling', value: `${format.write(ceilingKpa)}\u00a0${unit}`, note });
  }
  return facts;
}

function proofOf(preset: ReportPreset, pullCount: number, format: PaperFormat): string {
  if (!preset.accepted) return 'Not proven: the figures do not yet show that the target is held.';
  const pulls = `${pullCount} full-load ${pullCount === 1 ? 'pull' : 'pulls'}`;
  const heat = preset.heatSoakedPull
    ? 'At least one pull was made with the engine bay hot from driving.'
    : 'No pull was made with the engine bay hot from driving; expect a little less or more then.';
  const ceiling = preset.ceilingKept ? ' None passed the ceiling.' : '';
  if (!isProven(preset)) {
    return `Made by ${pulls} at the settings that are now stored.${ceiling} ${heat} Not proven in full; missing for that: ${sayPressures(preset.unproven.join('; '), format.write, format.unit)}.`;
  }
  return `Proven by ${pulls} at the settings that are now stored.${ceiling}${promiseOf(preset, format)} ${heat}`;
}

/** Sign-offs from before proofs were sealed with them say neither how they were proven nor what was missing. */
function isProven({ accepted, proven, proof, unproven }: ReportPreset): boolean {
  return accepted && (proven || (proof === null && unproven.length === 0));
}

function promiseOf({ proof }: ReportPreset, format: PaperFormat): string {
  if (proof === null || proof.lowKpa === null || proof.highKpa === null) return '';
  const share = `${Math.round(proof.coverageRatio * 100)}\u00a0% of all pulls`;
  const range = `${format.writePeak(proof.lowKpa)} to ${format.writePeak(proof.highKpa)}\u00a0${format.unit}`;
  return ` With a confidence of ${Math.round(proof.confidenceRatio * 100)}\u00a0%, at least ${share} lie within ${range}.`;
}

/** Said of the whole visit: the pull that made somebody look need not be one of those that prove the preset. */
function lookedOver({ foundSound }: ReportPreset, timeZone: string): string {
  if (foundSound.length === 0) return '';
  const looks = foundSound.map(
    ({ afterPull, at }) => `after pull ${afterPull} (${writeInstantAndZone(at, timeZone)})`,
  );
  return `While this preset was tuned, the car was looked over ${looks.join(' and ')}, and nothing wrong was found.`;
}
