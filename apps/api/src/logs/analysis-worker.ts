import { LogError, type LogOptions } from '@pullbook/tuning-math';
import { parentPort, workerData } from 'node:worker_threads';
import { analyseFile, type AnalysedLog } from './analyse-file.js';

/** What a worker is asked. */
export interface AnalysisTask {
  readonly file: string;
  readonly options: LogOptions;
}

/** What it answers: the analysis, or why there is none. */
export type AnalysisAnswer =
  | { readonly analysed: AnalysedLog }
  | { readonly unreadable: { readonly code: string; readonly message: string; readonly hint: string } };

async function answer({ file, options }: AnalysisTask): Promise<AnalysisAnswer> {
  try {
    return { analysed: await analyseFile(file, options) };
  } catch (error) {
    if (!(error instanceof LogError)) throw error;
    return { unreadable: { code: error.code, message: error.message, hint: error.hint } };
  }
}

parentPort?.postMessage(await answer(workerData as AnalysisTask));
