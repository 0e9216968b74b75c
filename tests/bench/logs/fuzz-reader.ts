import { seededRandom } from '@pullbook/practice-car';
import { analyseLog, LogError, type LogAnalysis } from '@pullbook/tuning-math';
import { CORPUS, type CorpusFile } from '../../logs/corpus.js';
import { mutateFile } from './mutate-file.js';

/** What mutated files did to the analysis. */
export interface FuzzResult {
  readonly fileCount: number;
  readonly analysed: number;
  readonly refused: number;
  /** Anything but a clear refusal or a sound result: seed and what happened. */
  readonly crashes: readonly string[];
  readonly slow: readonly string[];
  readonly unsound: readonly string[];
  readonly silentUnits: readonly string[];
  readonly slowestMs: number;
}

const SLOW_MS = 3000;
/** Ratios of a peak to the true one that a wrong unit makes; a peak near none of them is damage, not a unit. */
const WRONG_UNITS = [0.01, 0.1, 0.145, 6.895, 10, 14.5, 100, (138 + 101.3) / 138, (138 - 101.3) / 138];
const TRUE_PEAK_KPA = 138;

/**
 * Mutates files of the corpus and analyses them. Each must end in a LogError with words or in a result
 * whose figures are all finite or null, in time, and never in a usable pull that is off by the factor of a
 * wrong unit without a warning.
 */
export function fuzzReader(fileCount: number, firstSeed = 0): FuzzResult {
  const lists = {
    crashes: [] as string[],
    slow: [] as string[],
    unsound: [] as string[],
    silentUnits: [] as string[],
  };
  const found = { analysed: 0, refused: 0, slowestMs: 0 };
  for (let seed = firstSeed; seed < firstSeed + fileCount; seed += 1) {
    const file = CORPUS[seed % CORPUS.length] as CorpusFile;
    const name = `${seed} ${file.name}`;
    const started = performance.now();
    const outcome = tryFile(file, seed);
    const spentMs = performance.now() - started;
    found.slowestMs = Math.max(found.slowestMs, spentMs);
    if (spentMs > SLOW_MS) lists.slow.push(`${name}: ${spentMs.toFixed(0)} ms`);
    if (outcome === 'analysed' || outcome === 'refused') found[outcome] += 1;
    else lists[outcome.kind].push(`${name}: ${outcome.text}`);
  }
  return { fileCount, ...found, ...lists };
}

type Trouble = { readonly kind: 'crashes' | 'unsound' | 'silentUnits'; readonly text: string };

function tryFile(file: CorpusFile, seed: number): 'analysed' | 'refused' | Trouble {
  try {
    const analysis = analyseLog(mutateFile(file.bytes, seededRandom(seed)), file.options);
    const unsound = unsoundFigure(analysis, 'analysis');
    if (unsound !== null) return { kind: 'unsound', text: unsound };
    return hasSilentUnit(analysis)
      ? { kind: 'silentUnits', text: 'a usable pull off by a unit' }
      : 'analysed';
  } catch (fault) {
    if (fault instanceof LogError && fault.message.length > 10) return 'refused';
    return { kind: 'crashes', text: String(fault) };
  }
}

/** Where a figure is neither finite nor null; null where all are sound. */
function unsoundFigure(value: unknown, at: string): string | null {
  if (typeof value === 'number') return Number.isFinite(value) ? null : at;
  if (typeof value !== 'object' || value === null) return null;
  for (const [key, inner] of Object.entries(value)) {
    const found = unsoundFigure(inner, `${at}.${key}`);
    if (found !== null) return found;
  }
  return null;
}

function hasSilentUnit(analysis: LogAnalysis): boolean {
  const isWarned = analysis.warnings.some(
    ({ code }) => code.startsWith('pressure') || code === 'air-pressure-assumed',
  );
  if (isWarned) return false;
  return analysis.pulls.some((pull) => {
    const ratio = (pull.peakKpa ?? NaN) / TRUE_PEAK_KPA;
    return pull.usable && WRONG_UNITS.some((wrong) => Math.abs(ratio / wrong - 1) < 0.01);
  });
}
