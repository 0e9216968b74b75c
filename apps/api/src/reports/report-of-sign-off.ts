import {
  cautionsForDriving,
  type PaperHeader,
  type Report,
  type ReportPreset,
  type ReportPull,
} from '@pullbook/contracts';
import { sealHolds, type Seal } from '../sign-off/seal.js';
import { SealedContent } from '../sign-off/sealed-content.js';

/**
 * What the customer reads of a signed-off visit: from the sealed text and nothing else.
 *
 * @param paperHeader how the workshop is reached today, which is no part of what was signed
 */
export function reportOfSignOff(signOff: Seal, paperHeader: PaperHeader): Report {
  const sealed = SealedContent.parse(JSON.parse(signOff.sealedText));
  return {
    workshopName: sealed.workshop.name,
    paperHeader,
    units: sealed.workshop.units,
    visitNumber: sealed.visit.number,
    plate: sealed.car.plate,
    model: sealed.car.model,
    presets: sealed.presets.map(reportPreset),
    pulls: sealed.pulls.map(reportPull),
    cautions: [...cautionsForDriving],
    signedName: sealed.signedName,
    signedAt: sealed.signedAt,
    sealSha256: signOff.sealSha256,
    sealHolds: sealHolds(signOff),
  };
}

function reportPreset({ foundSound, ...preset }: SealedContent['presets'][number]): ReportPreset {
  return { ...preset, foundSound: foundSound.map(({ afterPull, at }) => ({ afterPull, at })) };
}

function reportPull(pull: SealedContent['pulls'][number]): ReportPull {
  const { presetId, number, dutyPct, peakKpa, heatSoaked, recordedAt } = pull;
  const isVoid = !pull.usable || pull.voidReason !== null;
  return { presetId, number, dutyPct, peakKpa, isVoid, heatSoaked, recordedAt };
}
