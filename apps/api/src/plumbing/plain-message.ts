import type { z } from 'zod';

type Issue = z.core.$ZodRawIssue;

const kindWords: Record<string, string> = {
  number: 'must be a number',
  nan: 'must be a number',
  int: 'must be a whole number',
  string: 'must be text',
  boolean: 'must be true or false',
  array: 'must be a list',
  object: 'must be an object with named fields',
  record: 'must be an object with named fields',
  null: 'must be empty',
};

const formatWords: Record<string, string> = {
  email: 'must be a mail address',
  uuid: 'must be an id',
  datetime: 'must be a date and time such as 2026-11-25T09:30:00+01:00',
};

/** What would have been right, in plain words; undefined where the schema brings its own words or none fit. */
export function plainMessage(issue: Issue): string | undefined {
  switch (issue.code) {
    case 'invalid_type':
      return issue.input === undefined ? 'is missing' : kindWords[issue.expected];
    case 'too_small':
    case 'too_big':
      return sizeMessage(issue);
    case 'invalid_format':
      return formatWords[issue.format];
    case 'invalid_value':
      return `must be one of: ${issue.values.map(String).join(', ')}`;
    case 'unrecognized_keys':
      return `has fields that are not known here: ${issue.keys.join(', ')}`;
    case 'invalid_union':
      return 'has the wrong form';
    default:
      return undefined;
  }
}

function sizeMessage(issue: Extract<Issue, { code: 'too_small' | 'too_big' }>): string {
  const isSmall = issue.code === 'too_small';
  const limit = String(isSmall ? issue.minimum : issue.maximum);
  const strict = isSmall ? 'above' : 'below';
  const bound = issue.inclusive === false ? strict : isSmall ? 'at least' : 'at most';
  if (issue.origin === 'string' && isSmall && limit === '1') return 'must not be empty';
  if (issue.origin === 'string') return `must have ${bound} ${limit} characters`;
  if (issue.origin === 'array') return `must have ${bound} ${limit} entries`;
  return `must be ${bound} ${limit}`;
}
