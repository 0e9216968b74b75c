'use client';

import type { RefObject } from 'react';
import { getBytes } from '../../../../client/request';
import { queryText } from '../../../../client/query-text';
import { sentence } from '../../../../components/form/sentence';
import { Menu } from '../../../../components/menu/menu';
import { useNotices } from '../../../../components/notices/notices';
import { pictureOfTraces } from '../../../../components/traces/picture-of-traces';
import { saveFile } from '../../../../components/traces/save-file';
import type { TimeWindow } from '../../../../components/traces/time-window';
import { readTheme } from '../../../../components/traces/trace-theme';
import { windowOfPull } from '../../../../components/traces/trace-state';
import type { TraceView } from '../../../../components/traces/trace-view';
import { useUnits } from '../../../../components/units/use-units';

interface SaveMenuProps {
  readonly view: TraceView;
  readonly place: RefObject<HTMLDivElement | null>;
}

/** Takes away what is looked at: as a picture, or its samples as CSV. */
export function SaveMenu({ view, place }: SaveMenuProps) {
  const { pressure, temperature } = useUnits();
  const notices = useNotices();
  const stem = view.index.log.fileName.replace(/[.][^.]*$/, '');
  const failed = (cause: unknown) =>
    notices.mind(sentence(cause instanceof Error ? cause.message : 'this could not be saved'));
  const savePicture = async () => {
    const element = place.current;
    if (element === null) return;
    const [sight, theme, width] = [view.sight(), readTheme(element), element.clientWidth];
    const png = await pictureOfTraces({ view, sight, theme, width, units: { pressure, temperature } });
    saveFile(png, `${stem} traces.png`);
  };
  const saveCut = async ({ fromS, toS }: TimeWindow) => {
    const channels = view.state.channels.join(',');
    const query = queryText({ fromS, toS, channels, pressure, temperature });
    const csv = await getBytes(`/logs/${view.index.log.id}/cut.csv${query}`);
    saveFile(new Blob([csv], { type: 'text/csv' }), `${stem} ${fromS.toFixed(2)}-${toS.toFixed(2)} s.csv`);
  };
  return (
    <Menu
      name="Save"
      label={
        <>
          Save <span aria-hidden="true">▾</span>
        </>
      }
    >
      {(close) => {
        const doing = (what: () => Promise<void>) => () => {
          close();
          what().catch(failed);
        };
        const { mode, pulls, window } = view.state;
        return (
          <>
            <button type="button" onClick={doing(savePicture)}>
              This picture (PNG)
            </button>
            {mode === 'log' ? (
              <button type="button" onClick={doing(() => saveCut(window))}>
                Its samples (CSV)
              </button>
            ) : (
              pulls.map((number) => {
                const pull = view.index.pulls[number];
                if (pull === undefined) return null;
                return (
                  <button
                    key={number}
                    type="button"
                    onClick={doing(() => saveCut(windowOfPull(view.index, pull)))}
                  >
                    Samples of pull {number + 1} (CSV)
                  </button>
                );
              })
            )}
          </>
        );
      }}
    </Menu>
  );
}
