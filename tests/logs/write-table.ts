import { baseRows, type BaseRow, type BaseShape } from './base-rows.js';

/** One column of a corpus file: header and the cell of a row. */
export interface Column {
  readonly header: string;
  readonly cell: (row: BaseRow, index: number) => string;
}

export interface TableForm {
  readonly delimiter?: string;
  readonly comma?: boolean;
  readonly lineEnd?: string;
  readonly shape?: BaseShape;
  /** Lines put before the header, between header and rows, after the rows. */
  readonly before?: readonly string[];
  readonly between?: readonly string[];
  readonly after?: readonly string[];
  readonly hasHeader?: boolean;
  /** Last word on each line of samples. */
  readonly line?: (text: string, row: BaseRow, index: number) => string | null;
}

export const time: Column = { header: 'Time (s)', cell: (row) => row.timeS.toFixed(2) };
export const boost: Column = { header: 'Boost (kPa)', cell: (row) => row.boostKpa.toFixed(1) };
export const rpm: Column = { header: 'Engine speed (rpm)', cell: (row) => row.rpm.toFixed(0) };
export const speed: Column = { header: 'Vehicle speed (km/h)', cell: (row) => row.kmh.toFixed(1) };
export const throttle: Column = { header: 'Throttle (%)', cell: (row) => row.throttlePct.toFixed(1) };
export const intake: Column = { header: 'Intake temp (C)', cell: (row) => row.intakeC.toFixed(1) };
export const USUAL: readonly Column[] = [time, boost, rpm, speed, throttle, intake];

/** The usual columns with some replaced (by place) or added. */
export function usualWith(changes: Readonly<Record<number, Column>>, ...more: Column[]): Column[] {
  return [...USUAL.map((column, place) => changes[place] ?? column), ...more];
}

/** A delimited text of the base drive. */
export function table(columns: readonly Column[], form: TableForm = {}): string {
  const { delimiter = ',', comma = false, lineEnd = '\n', hasHeader = true } = form;
  const rows = baseRows(form.shape).flatMap((row, index) => {
    const cells = columns.map((column) => column.cell(row, index));
    const text = cells.map((cell) => (comma ? cell.replace('.', ',') : cell)).join(delimiter);
    const line = form.line === undefined ? text : form.line(text, row, index);
    return line === null ? [] : [line];
  });
  const header = hasHeader ? [columns.map(({ header }) => header).join(delimiter)] : [];
  return (
    [...(form.before ?? []), ...header, ...(form.between ?? []), ...rows, ...(form.after ?? [])].join(
      lineEnd,
    ) + lineEnd
  );
}
