'use client';

import type { ChannelQuantity } from '@pullbook/contracts';
import { RECIPE_UNITS } from '@pullbook/tuning-math';
import { ChoiceField } from '../field/choice-field';
import { TextField } from '../field/text-field';
import { quantityNames, unitName } from './quantity-names';
import { withQuantity, type ColumnDraft, type ReadingDraft } from './reading-draft';
import styles from './reading.module.css';

interface ReadingEditorProps {
  readonly draft: ReadingDraft;
  readonly onChange: (draft: ReadingDraft) => void;
}

const delimiters = [
  { value: '', label: 'as found' },
  { value: ',', label: 'comma ,' },
  { value: ';', label: 'semicolon ;' },
  { value: '\t', label: 'tab' },
  { value: '|', label: 'bar |' },
];
const marks = [
  { value: '', label: 'as found' },
  { value: '.', label: 'point 0.5' },
  { value: ',', label: 'comma 0,5' },
];

/** Says of each column of a log what it holds and in which unit. */
export function ReadingEditor({ draft, onChange }: ReadingEditorProps) {
  const change = (index: number, column: ColumnDraft) =>
    onChange({ ...draft, columns: draft.columns.map((old, at) => (at === index ? column : old)) });
  return (
    <div className={styles.editor}>
      <ul className={styles.columns} aria-label="Columns of the file">
        {draft.columns.map((column, index) => (
          <ColumnLine
            key={`${column.header} ${column.occurrence}`}
            column={column}
            onChange={(next) => change(index, next)}
          />
        ))}
      </ul>
      <div className={styles.layout}>
        <TextField
          label="Rows a second"
          unit="Hz"
          inputMode="decimal"
          hint="Only where no column is the time."
          value={draft.sampleRateHz}
          onChange={(sampleRateHz) => onChange({ ...draft, sampleRateHz })}
        />
        <ChoiceField
          label="Between columns"
          choices={delimiters}
          value={draft.delimiter}
          onChange={(delimiter) => onChange({ ...draft, delimiter })}
        />
        <ChoiceField
          label="Decimals by"
          choices={marks}
          value={draft.decimalMark}
          onChange={(decimalMark) => onChange({ ...draft, decimalMark })}
        />
      </div>
    </div>
  );
}

interface ColumnLineProps {
  readonly column: ColumnDraft;
  readonly onChange: (column: ColumnDraft) => void;
}

function ColumnLine({ column, onChange }: ColumnLineProps) {
  const units = RECIPE_UNITS[column.quantity];
  return (
    <li className={column.quantity === 'unknown' ? styles.aside : undefined}>
      <span className={styles.header}>
        <b>{column.header}</b>
        <span className="soft">{column.samples.join(' · ')}</span>
      </span>
      <select
        aria-label={`What “${column.header}” holds`}
        value={column.quantity}
        onChange={(event) =>
          onChange(withQuantity(column, event.target.value as ChannelQuantity, column.unit))
        }
      >
        {Object.entries(quantityNames).map(([value, name]) => (
          <option key={value} value={value}>
            {name}
          </option>
        ))}
      </select>
      <select
        aria-label={`Unit of “${column.header}”`}
        aria-invalid={column.unit === '' ? true : undefined}
        disabled={units.length < 2}
        value={column.unit}
        onChange={(event) => onChange({ ...column, unit: event.target.value })}
      >
        {column.unit === '' ? <option value="">which unit?</option> : null}
        {units.map((unit) => (
          <option key={unit} value={unit}>
            {unitName(unit)}
          </option>
        ))}
      </select>
    </li>
  );
}
