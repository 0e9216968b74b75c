import type { ChannelQuantity, ChannelReading, LogChannel, UploadLook } from '@pullbook/contracts';
import { RECIPE_UNITS } from '@pullbook/tuning-math';

/** A column as a person sees and tells it; `unit` is '' where it must still be said. */
export interface ColumnDraft {
  readonly header: string;
  readonly occurrence: number;
  readonly samples: readonly string[];
  readonly quantity: ChannelQuantity;
  readonly unit: string;
  /** It held something, or was told to hold nothing, at first: to put it aside must be told. */
  readonly isTold: boolean;
}

export interface ReadingDraft {
  readonly columns: readonly ColumnDraft[];
  /** As typed. */
  readonly sampleRateHz: string;
  readonly delimiter: string;
  readonly decimalMark: string;
}

const isPressure = (quantity: ChannelQuantity) => quantity.endsWith('-pressure');

/** Quantity and unit of a column: a pressure without a unit waits for a person, others get their usual one. */
export function withQuantity(column: ColumnDraft, quantity: ChannelQuantity, unit = ''): ColumnDraft {
  const units = RECIPE_UNITS[quantity];
  const kept = units.includes(unit) ? unit : isPressure(quantity) ? '' : (units[0] ?? 'none');
  return { ...column, quantity, unit: kept };
}

/** The draft of a log that was read. */
export function draftOfChannels(channels: readonly LogChannel[], told: ChannelReading | null): ReadingDraft {
  return {
    columns: channels.map((channel) => {
      const quantity = toldQuantity(channel);
      const { header, occurrence, samples } = channel;
      return withQuantity(
        {
          header,
          occurrence,
          samples,
          quantity,
          unit: '',
          isTold: quantity !== 'unknown' || channel.basis === 'recipe',
        },
        quantity,
        channel.unit,
      );
    }),
    ...layoutOf(told),
  };
}

/** In a reading the quantity alone says whether a pressure is gauge or absolute. */
function toldQuantity({ quantity, reference }: LogChannel): ChannelQuantity {
  if (quantity === 'boost-pressure' && reference === 'absolute') return 'manifold-absolute-pressure';
  if (quantity === 'manifold-absolute-pressure' && reference === 'gauge') return 'boost-pressure';
  return quantity as ChannelQuantity;
}

/** The draft of a file of which only the first lines are known. */
export function draftOfLook(look: UploadLook): ReadingDraft {
  return {
    columns: look.columns.map((column) => {
      const { header, occurrence, samples, quantity, unit } = column;
      const plain = { header, occurrence, samples, quantity, unit: '', isTold: quantity !== 'unknown' };
      return withQuantity(plain, quantity, unit ?? '');
    }),
    ...layoutOf(null),
  };
}

/** The draft of a kept recipe, which shows no samples. */
export function draftOfReading(headers: readonly string[], reading: ChannelReading): ReadingDraft {
  const seen = new Map<string, number>();
  return {
    columns: headers.map((header) => {
      const occurrence = seen.get(header) ?? 0;
      seen.set(header, occurrence + 1);
      const told = reading.columns.find((one) => one.header === header && one.occurrence === occurrence);
      const quantity = told?.quantity ?? 'unknown';
      return withQuantity(
        { header, occurrence, samples: [], quantity, unit: '', isTold: told !== undefined },
        quantity,
        told?.unit ?? '',
      );
    }),
    ...layoutOf(reading),
  };
}

function layoutOf(told: ChannelReading | null): Omit<ReadingDraft, 'columns'> {
  return {
    sampleRateHz: String(told?.sampleRateHz ?? ''),
    delimiter: told?.delimiter ?? '',
    decimalMark: told?.decimalMark ?? '',
  };
}

/** Why a draft cannot be used yet, in words; null where it can. */
export function draftFault({ columns, sampleRateHz }: ReadingDraft): string | null {
  const open = columns.find(({ unit }) => unit === '');
  if (open !== undefined) return `Say the unit of “${open.header}”.`;
  const twice = columns.find(
    (column, index) =>
      column.quantity !== 'unknown' &&
      column.quantity !== 'marker' &&
      columns.findIndex(({ quantity }) => quantity === column.quantity) !== index,
  );
  if (twice !== undefined) return `Two columns cannot hold the same: “${twice.header}” is one of them.`;
  const rateHz = Number(sampleRateHz.replace(',', '.'));
  if (sampleRateHz.trim() !== '' && !(rateHz > 0 && rateHz <= 100_000))
    return 'Rows a second: a number above 0.';
  return null;
}

/** What is sent: every column that holds something, and those that a person put aside. */
export function readingOf(draft: ReadingDraft): ChannelReading {
  const rate = draft.sampleRateHz.trim();
  return {
    columns: draft.columns
      .filter(({ quantity, isTold }) => quantity !== 'unknown' || isTold)
      .map(({ header, occurrence, quantity, unit }) => ({ header, occurrence, quantity, unit })),
    sampleRateHz: rate === '' ? null : Number(rate.replace(',', '.')),
    delimiter: (draft.delimiter || null) as ChannelReading['delimiter'],
    decimalMark: (draft.decimalMark || null) as ChannelReading['decimalMark'],
  };
}
