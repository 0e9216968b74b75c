import * as z from 'zod';
import { Id, Instant, Line, RecordRevision } from '../basics/basics.js';

/** What a column of a log can hold; `unknown` is a column that is left aside. */
export const ChannelQuantity = z
  .enum([
    'time',
    'boost-pressure',
    'manifold-absolute-pressure',
    'barometric-pressure',
    'target-boost-pressure',
    'engine-speed',
    'vehicle-speed',
    'undriven-wheel-speed',
    'throttle',
    'pedal',
    'gear',
    'intake-temperature',
    'ambient-temperature',
    'coolant-temperature',
    'oil-temperature',
    'exhaust-temperature',
    'lambda',
    'knock-retard',
    'knock-count',
    'ignition-advance',
    'solenoid-duty',
    'acceleration',
    'altitude',
    'marker',
    'unknown',
  ])
  .meta({ id: 'ChannelQuantity' });
export type ChannelQuantity = z.infer<typeof ChannelQuantity>;

const HeaderText = z.string().max(500);
/** As many as the reader takes in a file. */
const mostColumns = 1000;

/** What a person said about one column. */
export const ReadingColumn = z
  .object({
    header: HeaderText,
    /** Which of several columns of that header, from 0. */
    occurrence: z.number().int().min(0).max(mostColumns).default(0),
    quantity: ChannelQuantity,
    unit: z.string().min(1).max(20),
  })
  .meta({ id: 'ReadingColumn' });
export type ReadingColumn = z.infer<typeof ReadingColumn>;

const manyOfThem: readonly ChannelQuantity[] = ['unknown', 'marker'];

/** How the files of one logger are read; what is null or not named here is recognised. */
export const ChannelReading = z
  .object({
    columns: z.array(ReadingColumn).max(mostColumns),
    /** Rows a second, for files without a time column. */
    sampleRateHz: z.number().positive().max(100_000).nullable().default(null),
    delimiter: z.enum([',', ';', '\t', '|']).nullable().default(null),
    decimalMark: z.enum(['.', ',']).nullable().default(null),
  })
  .superRefine(({ columns }, context) => {
    const seen = new Set<ChannelQuantity>();
    columns.forEach(({ quantity }, index) => {
      if (manyOfThem.includes(quantity)) return;
      const message = `only one column can be the ${quantity.replaceAll('-', ' ')}`;
      if (seen.has(quantity))
        context.addIssue({ code: 'custom', path: ['columns', index, 'quantity'], message });
      seen.add(quantity);
    });
  })
  .meta({ id: 'ChannelReading' });
export type ChannelReading = z.infer<typeof ChannelReading>;

/** By what a log is known to come from the same logger, set the same way: its headers and its unit row. */
export const LogShape = z
  .object({
    headers: z.array(HeaderText).max(mostColumns),
    unitTexts: z.array(HeaderText).max(mostColumns),
    hasHeader: z.boolean(),
  })
  .meta({ id: 'LogShape' });
export type LogShape = z.infer<typeof LogShape>;

const recipeShape = { name: Line, shape: LogShape, reading: ChannelReading };

/** How the workshop reads the logs of one shape. */
export const ChannelRecipe = z
  .object({ id: Id, ...recipeShape, revision: RecordRevision, createdAt: Instant })
  .meta({ id: 'ChannelRecipe' });
export type ChannelRecipe = z.infer<typeof ChannelRecipe>;
export const ChannelRecipeNew = z.object(recipeShape).meta({ id: 'ChannelRecipeNew' });
export type ChannelRecipeNew = z.infer<typeof ChannelRecipeNew>;
/** Which logs it is for never changes. */
export const ChannelRecipeChange = z.object({ name: Line, reading: ChannelReading }).partial();
export type ChannelRecipeChange = z.infer<typeof ChannelRecipeChange>;
export const ChannelRecipeList = z
  .object({ items: z.array(ChannelRecipe) })
  .meta({ id: 'ChannelRecipeList' });
