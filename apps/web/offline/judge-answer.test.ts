import { describe, expect, it } from 'vitest';
import { judgeAnswer } from './judge-answer';

const problem = (status: number, code: string, errors: object[] = []): string =>
  JSON.stringify({ type: 'about:blank', title: 'No', status, detail: 'why', code, requestId: 'r', errors });

describe('judgeAnswer', () => {
  it('takes a success for taken, a replayed one too', () => {
    expect(judgeAnswer(201, '{"id":"a"}')).toEqual({ kind: 'taken', answer: { id: 'a' } });
    expect(judgeAnswer(200, '{"id":"a"}').kind).toBe('taken');
  });

  it('sends again after a fault of the server, a busy one, and an answer that broke off', () => {
    expect(judgeAnswer(500, problem(500, 'internal'))).toEqual({ kind: 'later' });
    expect(judgeAnswer(503, '<html>')).toEqual({ kind: 'later' });
    expect(judgeAnswer(429, problem(429, 'too-many-requests'))).toEqual({ kind: 'later' });
    expect(judgeAnswer(201, '{"id":"a')).toEqual({ kind: 'later' });
    expect(judgeAnswer(409, problem(409, 'still-at-work'))).toEqual({ kind: 'later' });
  });

  it('takes what an earlier try had recorded for taken', () => {
    const errors = [{ field: 'recordId', message: 'pull-7' }];
    expect(judgeAnswer(409, problem(409, 'recorded-already', errors))).toEqual({
      kind: 'taken',
      answer: { id: 'pull-7' },
    });
  });

  it('tells being signed out from being refused', () => {
    expect(judgeAnswer(401, problem(401, 'not-signed-in'))).toEqual({ kind: 'signed-out' });
    expect(judgeAnswer(409, problem(409, 'visit-closed'))).toEqual({
      kind: 'refused',
      refusal: { status: 409, code: 'visit-closed', text: 'why' },
    });
  });
});
