import { LogError } from '@pullbook/tuning-math';
import { parentPort, workerData } from 'node:worker_threads';
import { analyseFile, type AnalysedLog, type FileToAnalyse } from './analyse-file.js';

/** What a worker answers: the analysis, or why there is none. */
export type AnalysisAnswer =
  | { readonly analysed: AnalysedLog }
  | { readonly unreadable: { readonly code: string; readonly message: string; readonly hint: string } };

async function answer(task: FileToAnalyse): Promise<AnalysisAnswer> {
  try {
    return { analysed: await analyseFile(task) };
  } catch (error) {
    if (!(error instanceof LogError)) throw error;
    return { unreadable: { code: error.code, message: error.message, hint: error.hint } };
  }
}

parentPort?.postMessage(await answer(workerData as FileToAnalyse));
