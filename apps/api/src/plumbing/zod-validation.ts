import type { FieldError } from '@pullbook/contracts';
import type { FastifySchemaCompiler } from 'fastify';
import type { z } from 'zod';
import { DomainError } from './domain-error.js';
import { fieldErrors } from './field-errors.js';
import { plainMessage } from './plain-message.js';

/** What a whole part of the request is called where no field of it can be named. */
const partNames: Record<string, string> = {
  body: 'body',
  querystring: 'query',
  params: 'path',
  headers: 'headers',
};

/** Checks each part of a request against its contract; a wrong one becomes `invalid-request`, field by field. */
export const zodValidatorCompiler: FastifySchemaCompiler<z.ZodType> = ({ schema, httpPart }) => {
  const whole = partNames[httpPart ?? ''] ?? 'request';
  return (data: unknown) => {
    const result = schema.safeParse(data, { reportInput: true, error: plainMessage });
    if (result.success) return { value: result.data };
    const errors = fieldErrors(result.error.issues, whole);
    return { error: new DomainError('invalid-request', sentenceOf(errors), { errors }) };
  };
};

function sentenceOf(errors: readonly FieldError[]): string {
  const told = errors.slice(0, 3).map(({ field, message }) => `${field} ${message}`);
  const rest = errors.length > 3 ? `; and ${errors.length - 3} more` : '';
  return told.join('; ') + rest;
}
