import type { ErrorCode, FieldError, Problem } from '@pullbook/contracts';
import { isUniqueConflict } from '@pullbook/database';
import type { FastifyError, FastifyReply, FastifyRequest } from 'fastify';
import fp from 'fastify-plugin';
import { DomainError } from './domain-error.js';
import { statusOfCode, titleOfCode } from './status-of-code.js';

interface Told {
  readonly code: ErrorCode;
  readonly detail?: string;
  readonly errors?: readonly FieldError[];
}

/** The one place where an error becomes an HTTP answer: RFC 9457 problem details. */
export const problemDetails = fp(
  async (app) => {
    app.setErrorHandler((error, request, reply) => sendProblem(request, reply, error));
    app.setNotFoundHandler((request, reply) =>
      sendProblem(request, reply, new DomainError('not-found', `there is nothing at ${pathOf(request)}`)),
    );
  },
  { name: 'problem-details' },
);

function sendProblem(request: FastifyRequest, reply: FastifyReply, error: unknown): FastifyReply {
  const told = tell(error);
  const status = statusOfCode[told.code];
  if (status >= 500) request.log.error({ err: error }, 'request failed');
  else request.log.warn({ code: told.code, detail: told.detail }, 'request refused');
  if (told.code === 'not-signed-in') reply.header('www-authenticate', 'Bearer');
  if (told.code === 'busy') reply.header('retry-after', '2');
  const problem: Problem = {
    type: `tag:pullbook.example,2026:problem/${told.code}`,
    title: titleOfCode[told.code],
    status,
    ...(told.detail === undefined ? {} : { detail: told.detail }),
    instance: pathOf(request),
    code: told.code,
    requestId: request.id,
    ...(told.errors === undefined || told.errors.length === 0 ? {} : { errors: [...told.errors] }),
  };
  return reply
    .code(status)
    .type('application/problem+json')
    .header('cache-control', 'no-store')
    .serializer((body: unknown) => JSON.stringify(body))
    .send(problem);
}

/** A query may hold what a person typed: the path alone is enough to find the place. */
function pathOf(request: FastifyRequest): string {
  return request.url.split('?')[0] ?? '/';
}

const codeOfFramework: Record<string, ErrorCode> = {
  FST_ERR_CTP_BODY_TOO_LARGE: 'too-large',
  FST_REQ_FILE_TOO_LARGE: 'too-large',
  FST_ERR_CTP_INVALID_MEDIA_TYPE: 'unsupported-media-type',
  FST_INVALID_MULTIPART_CONTENT_TYPE: 'unsupported-media-type',
  // Prisma: no connection, or no turn for a transaction, in time.
  P2024: 'busy',
  P2028: 'busy',
};
const codeOfStatus: Record<number, ErrorCode> = {
  404: 'not-found',
  413: 'too-large',
  415: 'unsupported-media-type',
  429: 'too-many-requests',
  503: 'busy',
};

function tell(error: unknown): Told {
  if (error instanceof DomainError) return { code: error.code, detail: error.message, errors: error.errors };
  if (isUniqueConflict(error)) {
    return { code: 'conflict', detail: 'somebody entered the same at the same moment; look again' };
  }
  return tellFramework(error as Partial<FastifyError>);
}

function tellFramework({ code = '', statusCode = 500, message = '' }: Partial<FastifyError>): Told {
  const wrongRequest = statusCode >= 400 && statusCode < 500 ? 'invalid-request' : 'internal';
  const told = codeOfFramework[code] ?? codeOfStatus[statusCode] ?? wrongRequest;
  // What went wrong inside is for the log, not for whoever asked.
  return statusOfCode[told] >= 500 ? { code: told } : { code: told, detail: message };
}
