'use client';

import { useRef, useState, type DragEvent } from 'react';
import { Button } from '../../../../components/button/button';
import styles from './logs.module.css';

/** Where files are dropped, or chosen by button and key. */
export function DropPlace({ onFiles }: Readonly<{ onFiles: (files: readonly File[]) => void }>) {
  const input = useRef<HTMLInputElement>(null);
  const [isOver, setOver] = useState(false);
  const drop = (event: DragEvent) => {
    event.preventDefault();
    setOver(false);
    onFiles([...event.dataTransfer.files]);
  };
  return (
    <div
      className={`${styles.drop} ${isOver ? styles.isOver : ''}`}
      onDragOver={(event) => {
        event.preventDefault();
        setOver(true);
      }}
      onDragLeave={() => setOver(false)}
      onDrop={drop}
    >
      <p>
        <b>Drop the day’s log files here,</b> of any number of cars.
      </p>
      <Button kind="act" big onClick={() => input.current?.click()}>
        Choose log files
      </Button>
      <input
        ref={input}
        className="unseen"
        tabIndex={-1}
        aria-label="Log files"
        type="file"
        multiple
        accept=".csv,.txt,.tsv,.log,text/csv,text/plain"
        onChange={(event) => {
          onFiles([...(event.target.files ?? [])]);
          event.target.value = '';
        }}
      />
    </div>
  );
}
