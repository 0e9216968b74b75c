import type {
  Controller,
  PaperHeader,
  PresetState,
  ReadinessKey,
  StripFigures,
  Units,
} from '@pullbook/contracts';
import type { Sentence } from '@pullbook/tuning-math';

/** A pull as it stands on the job sheet's pull table. */
export interface JobSheetPull {
  readonly number: number;
  readonly dutyPct: number;
  readonly gear: number | null;
  /** kPa gauge. */
  readonly peakKpa: number;
  /** Void or not usable. */
  readonly isVoid: boolean;
  /** 'usable', or why it is not, in plain words. */
  readonly verdict: Sentence;
}

/** One preset that this visit works on. All pressures kPa gauge. */
export interface JobSheetPreset {
  readonly name: string;
  readonly slot: number;
  readonly kind: 'standing' | 'timed-override';
  readonly holdSeconds: number | null;
  readonly purpose: string;
  readonly targetKpa: number | null;
  readonly toleranceKpa: number;
  readonly ceilingKpa: number | null;
  /** As stored so far. */
  readonly dutyPct: number | null;
  readonly gateHoldPct: number | null;
  readonly state: PresetState;
  readonly strip: StripFigures;
  /** This visit's pulls so far, in order. */
  readonly pulls: readonly JobSheetPull[];
}

/** One line of the readiness check of the visit's newest tuning session; unticked where there is none yet. */
export interface JobSheetCheck {
  readonly key: ReadinessKey;
  readonly question: string;
  readonly ok: boolean;
}

/** All that the printed page shows which travels with the car. Instants are ISO 8601. */
export interface JobSheet {
  readonly workshopName: string;
  readonly paperHeader: PaperHeader;
  /** Units of the person who prints it. */
  readonly units: Units;
  readonly visitId: string;
  readonly visitNumber: number;
  readonly plate: string;
  readonly model: string;
  readonly modelYear: number | null;
  readonly customerName: string;
  readonly customerPhone: string | null;
  readonly wishes: string;
  readonly bay: string | null;
  readonly tunerName: string | null;
  readonly bookedFor: string | null;
  readonly promisedAt: string | null;
  readonly controller: Pick<
    Controller,
    'name' | 'loop' | 'presetSlots' | 'hasTimedOverride' | 'dutyPct' | 'holdPct'
  > | null;
  /** As set on the car, kPa gauge; null where nobody wrote it down. */
  readonly overBoostCutKpa: number | null;
  readonly presets: readonly JobSheetPreset[];
  readonly readiness: readonly JobSheetCheck[];
  readonly cautions: readonly string[];
  /** Where this visit is opened on a device: what the QR code holds. */
  readonly visitUrl: string;
  readonly printedAt: string;
  readonly printedBy: string;
}
