import type { FieldError } from '@pullbook/contracts';
import type { z } from 'zod';

type Issue = z.core.$ZodIssue;

/**
 * Which fields are wrong, by dotted path (`car.limits.engineKpa`, `items.0.key`), each with what would have been right.
 * Where a value may take several forms, the form that it comes nearest to is meant.
 */
export function fieldErrors(issues: readonly Issue[], whole: string): FieldError[] {
  return flatten(issues, []).map(({ path, message }) => ({
    field: path.length === 0 ? whole : path.join('.'),
    message,
  }));
}

interface Wrong {
  readonly path: readonly string[];
  readonly message: string;
}

function flatten(issues: readonly Issue[], before: readonly string[]): Wrong[] {
  return issues.flatMap((issue): Wrong[] => {
    const path = [...before, ...issue.path.map(String)];
    const forms = issue.code === 'invalid_union' ? issue.errors : [];
    const nearest = [...forms].sort((a, b) => a.length - b.length)[0];
    return nearest === undefined ? [{ path, message: issue.message }] : flatten(nearest, path);
  });
}
