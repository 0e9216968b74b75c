import { parseJson } from '../client/parse-json';
import { problemFrom } from '../client/problem-from';
import type { Try } from './send-outbox';

/** Come back later: too busy, a fault of the server, a gateway without a server behind it, a lost race with oneself. */
const passing = new Set([408, 425, 429, 500, 502, 503, 504]);

/**
 * What an answer means for the entry that was sent. A record that an earlier try had made, whose answer was lost, is
 * as good as one just made.
 */
export function judgeAnswer(status: number, text: string): Try {
  if (status >= 200 && status < 300) {
    const answer = parseJson(text);
    return answer === null ? { kind: 'later' } : { kind: 'taken', answer };
  }
  if (status === 401) return { kind: 'signed-out' };
  if (passing.has(status)) return { kind: 'later' };
  const { code, message, fields } = problemFrom(status, text);
  if (code === 'still-at-work') return { kind: 'later' };
  if (code === 'recorded-already') {
    const id = fields.find((one) => one.field === 'recordId')?.message;
    return { kind: 'taken', answer: { id } };
  }
  return { kind: 'refused', refusal: { status, code, text: message } };
}
