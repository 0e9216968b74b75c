import { AirOfDay, FoundPull, PullTrace, type MapPlaceOf, type PullOnMap } from '@pullbook/contracts';
import type { WorkshopTransaction } from '@pullbook/database';
import type { CompressorMap } from '@pullbook/tuning-math';
import { z } from 'zod';
import { airOnRecord, engineWay, type EngineAir, type EngineWay } from './engine-air.js';
import type { EngineInputs } from './engine-inputs.js';
import { onMap, type RunningPoint } from './engine-point.js';

const MOST_PULLS = 30;
/** More points than that make no better line. */
const MOST_RUN_POINTS = 40;
/** Below this boost the engine breathes through the compressor, whose map does not reach down there. */
const LEAST_BOOST_KPA = 10;

const Traces = z.array(PullTrace);
const Found = z.object({ pulls: z.array(FoundPull) });

/** The newest standing pulls of a car, oldest first, each on the compressor map where its log tells engine speeds. */
export async function pullsOnMap(
  db: WorkshopTransaction,
  carId: string,
  engine: { readonly inputs: EngineInputs; readonly map: CompressorMap | null },
): Promise<PullOnMap[]> {
  const rows = await db.pull.findMany({
    where: { voidedAt: null, visit: { carId } },
    orderBy: [{ recordedAt: 'desc' }, { id: 'desc' }],
    take: MOST_PULLS,
    include: {
      tuningSession: { select: { air: true } },
      preset: { select: { revisions: { orderBy: { revision: 'desc' }, take: 1, select: { name: true } } } },
    },
  });
  const samplesOf = await loadSamples(db, rows);
  return rows.reverse().map((row) => {
    const measured = AirOfDay.parse(row.tuningSession.air);
    const air = airOfPull(measured, airOnRecord(engine.inputs));
    const samples = samplesOf.get(row.id) ?? [];
    const way = engineWay(engine.inputs, engine.map, air);
    return {
      pullId: row.id,
      presetId: row.presetId,
      presetName: row.preset.revisions[0]?.name ?? '',
      visitId: row.visitId,
      number: row.number,
      logId: row.logId,
      peakKpa: row.peakKpa,
      ...air,
      airMeasured: measured.temperatureC !== null && measured.pressureAbsKpa !== null,
      basis: samples.length === 0 ? 'typed' : 'log',
      ...placed(way, samples),
    };
  });
}

/** The pressure on record for the car's height stands in for a barometer that nobody read, the same for the air. */
function airOfPull({ temperatureC, pressureAbsKpa }: AirOfDay, onRecord: EngineAir): EngineAir {
  return {
    airC: temperatureC ?? onRecord.airC,
    barometerAbsKpa: pressureAbsKpa ?? onRecord.barometerAbsKpa,
  };
}

type AirOfDay = z.infer<typeof AirOfDay>;
type Placed = Pick<PullOnMap, 'run' | 'peak' | 'peakPlace' | 'leastSurgeMarginPct' | 'leastChokeMarginPct'>;

function placed(way: EngineWay | null, samples: readonly RunningPoint[]): Placed {
  const nowhere = { peak: null, peakPlace: null, leastSurgeMarginPct: null, leastChokeMarginPct: null };
  if (way === null || samples.length === 0) return { run: [], ...nowhere };
  const points = thinned(samples).map((sample) => onMap(way, sample));
  const peak = points.reduce((best, one) => (one.at.boostKpa > best.at.boostKpa ? one : best));
  return {
    run: points.map(({ at }) => at),
    peak: peak.at,
    peakPlace: peak.place,
    leastSurgeMarginPct: leastOf(points.map(({ place }) => place?.surgeMarginPct)),
    leastChokeMarginPct: leastOf(points.map(({ place }) => place?.chokeMarginPct)),
  };
}

function leastOf(margins: readonly (MapPlaceOf['surgeMarginPct'] | undefined)[]): number | null {
  const known = margins.filter((margin): margin is number => typeof margin === 'number');
  return known.length === 0 ? null : Math.min(...known);
}

/** Every so manieth sample, and the highest boost whatever place it has. */
function thinned(samples: readonly RunningPoint[]): readonly RunningPoint[] {
  const step = Math.ceil(samples.length / MOST_RUN_POINTS);
  const highest = samples.reduce((best, one) => (one.boostKpa > best.boostKpa ? one : best));
  return samples.filter((sample, index) => index % step === 0 || sample === highest);
}

interface LoggedPull {
  readonly id: string;
  readonly logId: string | null;
  readonly logVersion: number | null;
  readonly logPullIndex: number | null;
}

/** Boost over engine speed of each pull that a log holds, from the version of the log that it was taken from. */
async function loadSamples(
  db: WorkshopTransaction,
  rows: readonly LoggedPull[],
): Promise<Map<string, RunningPoint[]>> {
  const logIds = [...new Set(rows.flatMap(({ logId }) => (logId === null ? [] : [logId])))];
  if (logIds.length === 0) return new Map();
  const versions = await db.logVersion.findMany({
    where: { logId: { in: logIds } },
    select: { logId: true, number: true, analysis: true, traces: true },
  });
  const byName = new Map(versions.map((version) => [`${version.logId} ${version.number}`, version]));
  return new Map(
    rows.flatMap(({ id, logId, logVersion, logPullIndex }) => {
      const version = byName.get(`${logId} ${logVersion}`);
      if (version === undefined || logPullIndex === null) return [];
      const trace = Traces.parse(version.traces)[logPullIndex];
      const pull = Found.parse(version.analysis).pulls[logPullIndex];
      return trace === undefined || pull === undefined ? [] : [[id, samplesOf(trace, pull)] as const];
    }),
  );
}

function samplesOf(
  { timeS, boostKpa, engineSpeedRpm }: PullTrace,
  { startS, endS }: FoundPull,
): RunningPoint[] {
  return timeS.flatMap((time, index) => {
    const [boost, speed] = [boostKpa[index] ?? null, engineSpeedRpm[index] ?? null];
    if (boost === null || speed === null || time < startS || time > endS) return [];
    return boost < LEAST_BOOST_KPA || speed <= 0 ? [] : [{ boostKpa: boost, engineSpeedRpm: speed }];
  });
}

type PullTrace = z.infer<typeof PullTrace>;
