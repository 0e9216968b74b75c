'use client';

import { stages, type BoardCard, type Stage } from '@pullbook/contracts';
import { Menu } from '../../../../components/menu/menu';
import { stageNames } from '../../../../components/stage/stage-names';

interface MoveMenuProps {
  readonly card: BoardCard;
  readonly onMove: (card: BoardCard, to: Stage) => void;
}

/** Moving a car without dragging it. */
export function MoveMenu({ card, onMove }: MoveMenuProps) {
  return (
    <Menu
      compact
      name={`Move ${card.plate}`}
      label={
        <>
          Move <span aria-hidden="true">▾</span>
        </>
      }
    >
      {(close) =>
        stages.map((stage) => (
          <button
            key={stage}
            type="button"
            disabled={stage === card.stage}
            onClick={() => {
              close();
              onMove(card, stage);
            }}
          >
            {stageNames[stage]}
            {stage === card.stage ? ' (here now)' : ''}
          </button>
        ))
      }
    </Menu>
  );
}
