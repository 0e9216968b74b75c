'use client';

import { CompressorMapNew, type CarCompressorMap, type EngineSheet } from '@pullbook/contracts';
import { useRef, type FormEvent } from 'react';
import { Button } from '../../../../../../components/button/button';
import { ChoiceField } from '../../../../../../components/field/choice-field';
import { TextField } from '../../../../../../components/field/text-field';
import { readValues } from '../../../../../../components/form/read-values';
import { useDraft } from '../../../../../../components/form/use-draft';
import { Skeleton } from '../../../../../../components/marks/marks';
import { ProblemNote } from '../../../../../../components/marks/problem-note';
import { useNotices } from '../../../../../../components/notices/notices';
import { useUnits } from '../../../../../../components/units/use-units';
import {
  useCompressorMap,
  useRemoveCompressorMap,
  useSetCompressorMap,
} from '../../../../../../queries/engine/use-compressor-map';
import styles from './engine.module.css';

interface MapFormProps {
  readonly sheet: EngineSheet;
  readonly onDone: () => void;
}

const flowUnits = [
  { value: 'kgPerS', label: 'kg/s' },
  { value: 'gPerS', label: 'g/s' },
  { value: 'kgPerH', label: 'kg/h' },
  { value: 'lbPerMin', label: 'lb/min' },
  { value: 'lbPerH', label: 'lb/h' },
];
const references = [
  { value: 'gas-stand', label: '298 K and 100 kPa' },
  { value: 'standard-day', label: '288.15 K and 101.325 kPa' },
];
const nothing = { csv: '', flowUnit: 'kgPerS', reference: 'gas-stand', source: '' };
const example =
  'speed,flow,pressure ratio,efficiency\n60000,0.04,1.40,66\n60000,0.08,1.36,74\n60000,0.12,1.20,60';

/** Enters, changes or removes the map of a compressor. */
export function MapForm({ sheet, onDone }: MapFormProps) {
  const hasMap = sheet.map !== null;
  const before = useCompressorMap(sheet.carId, hasMap);
  if (hasMap && before.data === undefined) {
    return (
      <>
        <ProblemNote error={before.error} onRetry={() => void before.refetch()} />
        {before.isPending ? <Skeleton lines={6} label="Loading the map" /> : null}
      </>
    );
  }
  return <MapFields sheet={sheet} before={before.data ?? null} onDone={onDone} />;
}

function MapFields({ sheet, before, onDone }: MapFormProps & { readonly before: CarCompressorMap | null }) {
  const units = useUnits();
  const notices = useNotices();
  const keep = useSetCompressorMap();
  const remove = useRemoveCompressorMap();
  const file = useRef<HTMLInputElement>(null);
  const { csv, flowUnit, reference, source } = before ?? nothing;
  const draft = useDraft({ csv, flowUnit, reference, source });
  const car = { carId: sheet.carId, revision: sheet.revision };
  const submit = (event: FormEvent) => {
    event.preventDefault();
    const read = readValues(draft.values, units, CompressorMapNew, (from) => ({
      csv: from.text('csv'),
      flowUnit: from.text('flowUnit'),
      reference: from.text('reference'),
      source: from.text('source'),
    }));
    if ('faults' in read) return draft.fail(read.faults);
    const done = (map: CarCompressorMap) => {
      notices.done(`Map kept: ${map.pointCount} points on ${map.lines.length} speed lines.`);
      onDone();
    };
    return keep.mutate({ ...car, map: read.data }, { onSuccess: done });
  };
  const forget = () =>
    remove.mutate(car, {
      onSuccess: () => {
        notices.done('The map is removed. The records keep it.');
        onDone();
      },
    });
  return (
    <form onSubmit={submit} noValidate className="stack">
      <p>
        One row a point: shaft speed in r/min, flow, pressure ratio and, if known, efficiency. Points of one
        speed make a line, at least three of them; the point of least flow lies on the surge line, that of
        most flow at choke.
      </p>
      <TextField
        label="Points, as CSV"
        lines={9}
        hint={`For example: ${example.split('\n').slice(0, 2).join(' / ')}`}
        {...draft.bind('csv')}
      />
      <p>
        <Button onClick={() => file.current?.click()}>Take the points from a file</Button>
        <input
          ref={file}
          className="unseen"
          tabIndex={-1}
          aria-label="File with the points"
          type="file"
          accept=".csv,.txt,.tsv,text/csv,text/plain"
          onChange={(event) => {
            const [chosen] = event.target.files ?? [];
            if (chosen !== undefined) void chosen.text().then((text) => draft.set({ csv: text }));
            event.target.value = '';
          }}
        />
      </p>
      <div className="columns">
        <ChoiceField label="Flow is in" choices={flowUnits} {...draft.bind('flowUnit')} />
        <ChoiceField label="Flow as in air of" choices={references} {...draft.bind('reference')} />
        <TextField label="Where the points come from" {...draft.bind('source')} />
      </div>
      <ProblemNote error={keep.error ?? remove.error} />
      <p className={styles.buttons}>
        <Button type="submit" kind="act" busy={keep.isPending}>
          Keep the map
        </Button>
        {before === null ? null : (
          <Button busy={remove.isPending} onClick={forget}>
            Remove the map
          </Button>
        )}
      </p>
    </form>
  );
}
