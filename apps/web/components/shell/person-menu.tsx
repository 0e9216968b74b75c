'use client';

import type { Units } from '@pullbook/contracts';
import Link from 'next/link';
import { useState, type ReactNode } from 'react';
import { useChangeUnits } from '../../queries/people/use-change-units';
import { useChangeTour } from '../../queries/people/use-change-tour';
import { useSignedInMe } from '../../queries/people/use-me';
import { useSignOut } from '../../queries/people/use-sign-in';
import { readTheme, setTheme, type Theme } from '../theme/theme';
import { Menu } from '../menu/menu';
import { useNotices } from '../notices/notices';
import styles from './shell.module.css';

const pressures: readonly Units['pressure'][] = ['kPa', 'bar', 'psi'];
const temperatures: ReadonlyArray<readonly [Units['temperature'], string]> = [
  ['C', '°C'],
  ['F', '°F'],
];
const themes: ReadonlyArray<readonly [Theme, string]> = [
  ['system', 'As the device'],
  ['day', 'Day'],
  ['night', 'Night'],
];

/** What belongs to the person: units, day or night, signing out. Screens may put entries of their own on top. */
export function PersonMenu({ top }: Readonly<{ top?: (close: () => void) => ReactNode }>) {
  const me = useSignedInMe();
  const changeUnits = useChangeUnits();
  const changeTour = useChangeTour();
  const signOut = useSignOut();
  const notices = useNotices();
  const [theme, showTheme] = useState<Theme>(readTheme);
  const choose = (units: Units) => changeUnits.mutate(units);
  return (
    <Menu
      name={`Menu of ${me.member.name}`}
      label={
        <>
          {me.member.name.split(' ')[0]} <span aria-hidden="true">▾</span>
        </>
      }
    >
      {(close) => (
        <>
          {top?.(close)}
          <p>My units</p>
          <div className={styles.choices} role="group" aria-label="Pressure unit">
            {pressures.map((pressure) => (
              <button
                key={pressure}
                type="button"
                aria-pressed={me.units.pressure === pressure}
                onClick={() => choose({ ...me.units, pressure })}
              >
                {pressure}
              </button>
            ))}
          </div>
          <div className={styles.choices} role="group" aria-label="Temperature unit">
            {temperatures.map(([temperature, word]) => (
              <button
                key={temperature}
                type="button"
                aria-pressed={me.units.temperature === temperature}
                onClick={() => choose({ ...me.units, temperature })}
              >
                {word}
              </button>
            ))}
          </div>
          <p>Day or night</p>
          <div className={styles.choices} role="group" aria-label="Day or night">
            {themes.map(([value, word]) => (
              <button
                key={value}
                type="button"
                aria-pressed={theme === value}
                onClick={() => {
                  setTheme(value);
                  showTheme(value);
                }}
              >
                {word}
              </button>
            ))}
          </div>
          <Link href="/words" prefetch={false}>
            Words explained
          </Link>
          {me.tourStep === null ? (
            <button
              type="button"
              onClick={() => {
                changeTour.mutate(0);
                close();
              }}
            >
              Take the first tour
            </button>
          ) : null}
          <p>
            {me.member.name}, {me.member.role} · {me.workshop.name}
          </p>
          <button
            type="button"
            onClick={() =>
              signOut.mutate(undefined, {
                onError: (error) => notices.mind(`Still signed in. ${error.message}`),
              })
            }
          >
            Sign out
          </button>
        </>
      )}
    </Menu>
  );
}
