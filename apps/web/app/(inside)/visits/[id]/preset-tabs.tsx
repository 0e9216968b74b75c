'use client';

import type { Preset, PresetState } from '@pullbook/contracts';
import { presetStateNames, presetStateShapes } from '../../../../components/preset/preset-state-names';
import styles from './visit.module.css';

interface PresetTabsProps {
  readonly presets: readonly Preset[];
  readonly chosenId: string;
  readonly onChoose: (id: string) => void;
  /** Left out where no preset is to be added. */
  readonly onAdd?: () => void;
}

const shapeOf = (state: PresetState) => presetStateShapes[state];

/** Which preset is being worked on; its state told by shape and word. */
export function PresetTabs({ presets, chosenId, onChoose, onAdd }: PresetTabsProps) {
  return (
    <div className={styles.tabs} role="group" aria-label="Presets">
      {presets.map((preset) => (
        <button
          key={preset.id}
          type="button"
          aria-pressed={preset.id === chosenId}
          onClick={() => onChoose(preset.id)}
        >
          <b>
            {preset.slot} {preset.name}
          </b>
          <span className="small">
            <span aria-hidden="true">{shapeOf(preset.state)} </span>
            {presetStateNames[preset.state]}
          </span>
        </button>
      ))}
      {onAdd === undefined ? null : (
        <button type="button" className={styles.addTab} onClick={onAdd}>
          Add preset
        </button>
      )}
    </div>
  );
}
