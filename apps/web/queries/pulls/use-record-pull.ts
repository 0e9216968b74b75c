import type { Preset, Pull, PullNew, Reason, TuningSession } from '@pullbook/contracts';
import { useMutation } from '@tanstack/react-query';
import { useUnits } from '../../components/units/use-units';
import { enqueue } from '../../offline/enqueue';
import { useSignedInMe } from '../people/use-me';

interface Driven {
  readonly input: PullNew;
  readonly preset: Preset;
  /** What to mind about it, told at once. */
  readonly warnings: readonly Reason[];
}

/**
 * Writes a pull down on this device, from where it is sent once, in its turn, with the time at which it was driven.
 */
export function useRecordPull(session: TuningSession) {
  const me = useSignedInMe();
  const units = useUnits();
  return useMutation({
    networkMode: 'always',
    mutationFn: ({ input, preset, warnings }: Driven) => {
      const recordedAt = new Date().toISOString();
      const peak = `${units.peak(input.peakKpa)} ${units.pressureWord}`;
      return enqueue({
        memberId: me.member.id,
        visitId: session.visitId,
        path: `/tuning-sessions/${session.id}/pulls`,
        body: { ...input, presetRevision: preset.revision, recordedAt },
        label: `Pull of ${preset.slot} ${preset.name}: ${peak} at ${input.dutyPct} %`,
        shows: (key) => ({
          pull: asDriven({ ...input, recordedAt }, { key, session, preset, warnings, by: me.member.name }),
        }),
      });
    },
  });
}

interface About {
  readonly key: string;
  readonly session: TuningSession;
  readonly preset: Preset;
  readonly warnings: readonly Reason[];
  readonly by: string;
}

/** The pull as it will stand in the book; its number comes with its place among the others. */
function asDriven(
  input: PullNew & { recordedAt: string },
  { key, session, preset, warnings, by }: About,
): Pull {
  const { peakKpa, settledKpa } = input;
  return {
    rawPeakKpa: null,
    intakeC: null,
    gradientPct: null,
    hunting: null,
    ...input,
    overshootPct: settledKpa === null ? null : (100 * (peakKpa - settledKpa)) / settledKpa,
    id: key,
    tuningSessionId: session.id,
    presetRevision: preset.revision,
    number: 1,
    source: 'typed',
    logId: null,
    usable: true,
    reasons: [],
    warnings: [...warnings],
    voidedAt: null,
    voidReason: null,
    foundSoundAt: null,
    foundSoundNote: null,
    foundSoundBy: null,
    recordedBy: by,
  };
}
