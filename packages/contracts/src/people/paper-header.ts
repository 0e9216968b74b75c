import * as z from 'zod';

/** One line on paper: no control characters, no marks that turn the direction of writing. */
const paperLine = (longest: number): z.ZodString =>
  z
    .string()
    .trim()
    .max(longest)
    .regex(/^[^\p{Cc}\u202a-\u202e\u2066-\u2069]*$/u, 'must be one line of plain text');

function isTimeZone(name: string): boolean {
  try {
    return name === '' || new Intl.DateTimeFormat('en-GB', { timeZone: name }).format(0) !== '';
  } catch (error) {
    if (error instanceof RangeError) return false;
    throw error;
  }
}

export const PaperSize = z.enum(['a4', 'letter']);

/** What stands at the head and foot of the workshop's papers; a line that is empty is not printed. */
export const PaperHeader = z
  .object({
    addressLines: z.array(paperLine(80)).max(4),
    phone: paperLine(40),
    /** Mail or web address. */
    online: paperLine(100),
    /** Number in a register, tax number. */
    registration: paperLine(120),
    foot: paperLine(160),
    /** What is printed on where the reader does not ask for the other. */
    paper: PaperSize,
    /** Zone of the times on paper, as the IANA names it: 'Europe/Vienna'; empty for that of the server's machine. */
    timeZone: z
      .string()
      .trim()
      .max(60)
      .refine(isTimeZone, 'must be a time zone such as Europe/Vienna')
      .default(''),
  })
  .meta({ id: 'PaperHeader' });
export type PaperHeader = z.infer<typeof PaperHeader>;

/** The header of a workshop that has not filled it in. */
export const emptyPaperHeader: PaperHeader = {
  addressLines: [],
  phone: '',
  online: '',
  registration: '',
  foot: '',
  paper: 'a4',
  timeZone: '',
};
