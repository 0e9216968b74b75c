import { cautionsBeforePulling, type CorrectionAdvice, type NextCorrection } from '@pullbook/contracts';
import { adviseCorrection, ArgumentError, type CorrectionRequest } from '@pullbook/tuning-math';
import type { Actor } from '../plumbing/actor.js';
import type { PresetRecord } from '../presets/load-presets.js';
import { huntingOf } from '../pulls/present-pull.js';
import { loadBenchPreset } from './load-bench-preset.js';
import { missingBeforePull } from './missing-before-pull.js';

type LoggedPull = CorrectionRequest['pulls'][number] & { readonly number: number };

/**
 * The next correction strength of a preset, or what is missing before there may be one. It rests on the usable logged
 * pulls of this visit: a typed peak does not show whether boost hunts.
 *
 * @throws DomainError not-found, preset-not-of-this-car
 */
export async function findNextCorrection(
  actor: Actor,
  sessionId: string,
  presetId: string,
): Promise<NextCorrection> {
  const { session, preset } = await loadBenchPreset(actor.db, sessionId, presetId);
  const { controller } = preset.car;
  const pulls = await readLoggedPulls(actor, session.visit.id, presetId);
  const asked = askMath(preset, pulls);
  const missing = [...asked.missing, ...missingBeforePull(preset, session)];
  return {
    applies: controller !== null && controller.isClosedLoop && controller.correction !== null,
    ready: missing.length === 0,
    missing,
    cautions: [...cautionsBeforePulling],
    advice: missing.length === 0 ? asked.advice : null,
    keptStrength: preset.values.correctionStrength,
    lastStrength: pulls.at(-1)?.strength ?? null,
    range: controller?.correction ?? null,
    restsOnPulls: pulls.map((pull) => pull.number),
  };
}

async function readLoggedPulls({ db }: Actor, visitId: string, presetId: string): Promise<LoggedPull[]> {
  const rows = await db.pull.findMany({
    where: { visitId, presetId, voidedAt: null, usable: true, source: 'log' },
    orderBy: { number: 'asc' },
  });
  return rows.flatMap((row) => {
    const { number, correctionStrength, settledKpa } = row;
    if (correctionStrength === null || settledKpa === null || settledKpa < 1) return [];
    return [{ number, strength: correctionStrength, settledKpa, hunting: huntingOf(row) }];
  });
}

interface Asked {
  readonly advice: CorrectionAdvice | null;
  readonly missing: string[];
}

function askMath({ values, car }: PresetRecord, pulls: readonly LoggedPull[]): Asked {
  const without = (...missing: string[]): Asked => ({ advice: null, missing });
  const range = car.controller?.correction ?? null;
  if (range === null || car.controller?.isClosedLoop !== true) {
    return without("this car's controller does not correct itself");
  }
  const { targetKpa, toleranceKpa } = values;
  if (targetKpa === null) return without('agree the target of this preset');
  if (pulls.length === 0) return without('take in a log of a pull, with its correction strength');
  const controller = { strengthMin: range.min, strengthMax: range.max, strengthStep: range.step };
  try {
    const { reasons, ...answer } = adviseCorrection({ controller, goal: { targetKpa, toleranceKpa }, pulls });
    return {
      advice: {
        ...answer,
        reasons: reasons.map(({ code, text, pieces }) => ({ code, text, pieces: [...pieces] })),
      },
      missing: [],
    };
  } catch (error) {
    if (!(error instanceof ArgumentError)) throw error;
    return without(`no advice is possible: ${error.message}`);
  }
}
