import type { TracePull } from '@pullbook/contracts';
import { formatPressure, type PressureUnit } from '@pullbook/tuning-math';
import type { YOf } from './draw-line';
import { xOf, type Scene } from './scene';

interface Box {
  readonly top: number;
  readonly bottom: number;
}

const HATCH_PX = 6;

/** What the scale of the boost must show beside the samples: targets and ceilings of the pulls in the book. */
export function goalFigures({ index, state }: Scene): number[] {
  const seen =
    state.mode === 'log' ? index.pulls : index.pulls.filter((pull) => state.pulls.includes(pull.index));
  return seen.flatMap(({ record, peakKpa }) =>
    [record?.ceilingKpa, record?.targetKpa, peakKpa].filter((kpa) => typeof kpa === 'number'),
  );
}

/** Tolerance band, target and ceiling, as on the peak strip: along the log behind each pull, compared behind all. */
export function drawGoal(scene: Scene, box: Box, yOf: YOf): void {
  const { index, state, layout } = scene;
  if (state.mode === 'log') {
    for (const pull of index.pulls) {
      const [from, to] = [xOf(scene, pull.startS), xOf(scene, pull.endS)];
      if (to > layout.left && from < layout.right) drawGoalOf(scene, pull, { ...box, from, to }, yOf);
    }
    return;
  }
  const goals = new Map<string, TracePull>();
  for (const number of state.pulls) {
    const pull = index.pulls[number];
    if (pull?.record) goals.set(`${pull.record.targetKpa}/${pull.record.ceilingKpa}`, pull);
  }
  for (const pull of goals.values())
    drawGoalOf(scene, pull, { ...box, from: layout.left, to: layout.right }, yOf);
}

function drawGoalOf(
  scene: Scene,
  { record }: TracePull,
  box: Box & { readonly from: number; readonly to: number },
  yOf: YOf,
): void {
  const { context, theme, layout } = scene;
  if (record === null) return;
  const from = Math.max(layout.left, box.from);
  const to = Math.min(layout.right, box.to);
  const { targetKpa, toleranceKpa, ceilingKpa } = record;
  if (targetKpa !== null) {
    const [top, bottom] = [yOf(targetKpa + toleranceKpa), yOf(targetKpa - toleranceKpa)];
    drawBand(scene, { from, to, top, bottom });
    context.strokeStyle = theme.petrol;
    context.lineWidth = 1.5;
    level(context, from, to, yOf(targetKpa));
  }
  if (ceilingKpa !== null) {
    context.strokeStyle = theme.wall;
    context.lineWidth = 4;
    level(context, from, to, yOf(ceilingKpa));
  }
}

/** A level of the goal with its words. */
export interface GoalLevel {
  readonly kpa: number;
  readonly text: string;
  readonly isCeiling: boolean;
}

/** Targets and ceilings of the pulls in sight, each once, the ceilings first. */
export function goalLevels({ index, state, units }: Scene): GoalLevel[] {
  const { fromS, toS } = state.window;
  const seen = index.pulls.filter(({ index: number, startS, endS }) =>
    state.mode === 'log' ? endS > fromS && startS < toS : state.pulls.includes(number),
  );
  const write = (kpa: number): string =>
    formatPressure(kpa, units.pressure as PressureUnit, { withUnit: false });
  const ceilings = new Set(seen.flatMap(({ record }) => record?.ceilingKpa ?? []));
  const targets = new Set(seen.flatMap(({ record }) => record?.targetKpa ?? []));
  return [
    ...[...ceilings].map((kpa) => ({ kpa, text: `ceiling ${write(kpa)}`, isCeiling: true })),
    ...[...targets].map((kpa) => ({ kpa, text: `target ${write(kpa)}`, isCeiling: false })),
  ];
}

function drawBand(
  { context, theme }: Scene,
  box: { readonly from: number; readonly to: number; readonly top: number; readonly bottom: number },
): void {
  const { from, to, top, bottom } = box;
  context.save();
  context.beginPath();
  context.rect(from, top, to - from, bottom - top);
  context.fillStyle = theme.band;
  context.globalAlpha = 0.75;
  context.fill();
  context.globalAlpha = 1;
  context.clip();
  context.strokeStyle = theme.hatch;
  context.lineWidth = 1;
  context.beginPath();
  const height = bottom - top;
  for (let x = from - height; x < to; x += HATCH_PX) {
    context.moveTo(x, bottom);
    context.lineTo(x + height, top);
  }
  context.stroke();
  context.restore();
}

function level(context: CanvasRenderingContext2D, from: number, to: number, y: number): void {
  context.beginPath();
  context.moveTo(from, y);
  context.lineTo(to, y);
  context.stroke();
}
